# Does layering.cmake fail where it should? Run as: cmake -DSCRATCH=<folder> -P tests/layering_selftest.cmake
# Makes a small sound tree in SCRATCH, then breaks one layer after another in it.
cmake_minimum_required(VERSION 3.25)

set(faults 0)

# Checks the tree in SCRATCH; `expected` is a text that must stand in the complaint, or SOUND.
function(check what expected)
    execute_process(
        COMMAND ${CMAKE_COMMAND} -DROOT=${SCRATCH} -P ${CMAKE_CURRENT_LIST_DIR}/layering.cmake
        RESULT_VARIABLE result OUTPUT_VARIABLE output ERROR_VARIABLE output)
    if(expected STREQUAL "SOUND" AND result EQUAL 0)
        return()
    endif()
    string(FIND "${output}" "${expected}" place)
    if(expected STREQUAL "SOUND" OR result EQUAL 0 OR place EQUAL -1)
        message("${what}: expected '${expected}', got ${result}: ${output}")
        math(EXPR faults "${faults} + 1")
        set(faults ${faults} PARENT_SCOPE)
    endif()
endfunction()

macro(check_breach file include)
    file(READ ${SCRATCH}/${file} sound_text)
    # The bad include comes third, after a line that would shift a careless count.
    file(WRITE ${SCRATCH}/${file} "#include <vector>\nint f(int a[]); // [;\\\n#  include ${include}\n${sound_text}")
    check("${file} with ${include}" "${file}:3:")
    file(WRITE ${SCRATCH}/${file} "${sound_text}")
endmacro()

file(REMOVE_RECURSE ${SCRATCH})
file(MAKE_DIRECTORY ${SCRATCH})
check("an empty folder" "There is no engine")

file(WRITE ${SCRATCH}/engine/a.h "#include <vector>\n#include <Eigen/Core>\n")
file(WRITE ${SCRATCH}/engine/a.cpp "#include \"engine/a.h\"\n#include <toml++/toml.h>\n// never: #include <QObject>\n")
file(WRITE ${SCRATCH}/widgets/b.h "#include \"engine/a.h\"\n#include <QObject>\n")
file(WRITE ${SCRATCH}/widgets/b.cpp "#include \"widgets/b.h\"\n#include <qcustomplot.h>\n")
file(WRITE ${SCRATCH}/app/main.cpp "#include \"widgets/b.h\"\n#include \"engine/a.h\"\n#include <QApplication>\n")
file(WRITE ${SCRATCH}/app/cli_main.cpp "#include \"engine/a.h\"\n#include <CLI/CLI.hpp>\n")
file(WRITE ${SCRATCH}/tests/unit/a_test.cpp "#include \"engine/a.h\"\n#include \"tests/support/x.h\"\n")
check("the sound tree" SOUND)

check_breach(engine/a.h <QString>)
check_breach(engine/a.cpp <QtCore/QString>)
check_breach(engine/a.cpp <qcustomplot.h>)
check_breach(engine/a.cpp "\"widgets/b.h\"")
check_breach(engine/a.h "\"app/x.h\"")
check_breach(engine/a.cpp "\"tests/support/x.h\"")
check_breach(engine/a.cpp <CLI/CLI.hpp>)
check_breach(engine/a.h <toml++/toml.h>)
check_breach(engine/a.h <boost/random/sobol.hpp>)
check_breach(engine/a.cpp "\"../app/x.h\"")
check_breach(widgets/b.cpp "\"app/x.h\"")
check_breach(widgets/b.cpp "\"tests/support/x.h\"")
check_breach(widgets/b.cpp <toml++/toml.h>)
check_breach(widgets/b.h <qcustomplot.h>)
check_breach(app/main.cpp "\"tests/support/x.h\"")
check_breach(app/main.cpp <toml++/toml.h>)
check_breach(app/cli_main.cpp <QCoreApplication>)
check_breach(app/cli_main.cpp "\"widgets/b.h\"")
check_breach(tests/unit/a_test.cpp "\"../support/x.h\"")

check("the tree mended again" SOUND)
file(REMOVE_RECURSE ${SCRATCH})
if(faults GREATER 0)
    message(FATAL_ERROR "layering.cmake was wrong ${faults} time(s).")
endif()
