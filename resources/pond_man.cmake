# Makes the man page of the pond file of what dawnline-cli says of its keys, which is the table that reads the file.
# Run as: cmake -DPROGRAM=<path> -DVERSION=<number> -DOUT=<file> -P pond_man.cmake
cmake_minimum_required(VERSION 3.25)

function(said_of result)
    execute_process(COMMAND ${CMAKE_COMMAND} -E env LC_ALL=C.UTF-8 ${PROGRAM} explain ${ARGN}
        OUTPUT_VARIABLE said RESULT_VARIABLE code ERROR_QUIET)
    if(NOT code EQUAL 0)
        message(FATAL_ERROR "dawnline-cli explain ${ARGN} ended with ${code}.")
    endif()
    # Roff takes a backslash, and a point or a quote at the start of a line, for its own. A semicolon, which
    # CMake would take for the end of a list's item, stays as it is inside quotes.
    string(REPLACE "\\" "\\\\" said "${said}")
    string(REPLACE "-" "\\-" said "${said}")
    string(REGEX REPLACE "(^|\n)([.'])" "\\1\\\\&\\2" said "${said}")
    set(${result} "${said}" PARENT_SCOPE)
endfunction()

said_of(overview)
said_of(reference --all)
file(READ ${CMAKE_CURRENT_LIST_DIR}/dawnline-pond.5.in page)
string(REPLACE "@VERSION@" "${VERSION}" page "${page}")
string(REPLACE "@OVERVIEW@" "${overview}" page "${page}")
string(REPLACE "@REFERENCE@" "${reference}" page "${page}")
file(WRITE ${OUT} "${page}")
