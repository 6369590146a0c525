# Makes a man page of what a program says of itself, so that it cannot part from the table of options.
# Run as: cmake -DPROGRAM=<path> -DNAME=<name> -DBRIEF=<sentence> -DVERSION=<number> [-DCOMMANDS="a;b"] -DOUT=<file> -P man.cmake
cmake_minimum_required(VERSION 3.25)

function(help_of result)
    execute_process(COMMAND ${CMAKE_COMMAND} -E env LC_ALL=C.UTF-8 ${PROGRAM} ${ARGN} --help
        OUTPUT_VARIABLE said RESULT_VARIABLE code ERROR_QUIET)
    if(NOT code EQUAL 0)
        message(FATAL_ERROR "${NAME} ${ARGN} --help ended with ${code}.")
    endif()
    # Roff takes a backslash, and a point or a quote at the start of a line, for its own.
    string(REPLACE "${PROGRAM}" "${NAME}" said "${said}")
    string(REPLACE "\\" "\\\\" said "${said}")
    string(REPLACE "-" "\\-" said "${said}")
    string(REGEX REPLACE "(^|\n)([.'])" "\\1\\\\&\\2" said "${said}")
    set(${result} "${said}" PARENT_SCOPE)
endfunction()

string(TOUPPER ${NAME} title)
string(REPLACE "-" "\\-" shown ${NAME})
help_of(general)
set(page ".TH ${title} 1 \"\" \"Dawnline ${VERSION}\" \"User commands\"\n")
string(APPEND page ".SH NAME\n${shown} \\- ${BRIEF}\n")
string(APPEND page ".SH DESCRIPTION\n.nf\n${general}.fi\n")
foreach(command IN LISTS COMMANDS)
    help_of(said ${command})
    string(TOUPPER ${command} heading)
    string(APPEND page ".SH COMMAND ${heading}\n.nf\n${said}.fi\n")
endforeach()
string(APPEND page ".SH \"EXIT STATUS\"\n0 done; 1 the run ended early; 2 bad input; 3 a fault of the program.\n")
string(APPEND page ".SH CAUTIONS\nThe output compares plans under stated assumptions and is no prediction of survival.\n")
file(WRITE ${OUT} "${page}")
