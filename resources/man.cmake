# Makes a man page of what a program says of itself, so that it cannot part from the table of options.
# Run as: cmake -DPROGRAM=<path> -DNAME=<name> -DBRIEF=<sentence> -DVERSION=<number> -DENGINE=<folder> -DOUT=<file> -P man.cmake
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

# A bound as the engine has it, so that the page cannot part from it either.
function(bound_of result name file)
    file(READ ${ENGINE}/${file} text)
    if(NOT text MATCHES "${name} = (std::uintmax_t{)?([0-9e.]+)")
        message(FATAL_ERROR "${file} has no ${name}.")
    endif()
    set(${result} "${CMAKE_MATCH_2}" PARENT_SCOPE)
endfunction()

string(TOUPPER ${NAME} title)
string(REPLACE "-" "\\-" shown ${NAME})
help_of(general)
set(page ".TH ${title} 1 \"\" \"Dawnline ${VERSION}\" \"User commands\"\n")
string(APPEND page ".SH NAME\n${shown} \\- ${BRIEF}\n")
string(APPEND page ".SH DESCRIPTION\n.nf\n${general}.fi\n")
# Its commands are those that it lists itself.
string(FIND "${general}" "Subcommands:" listed)
set(commands "")
if(listed GREATER_EQUAL 0)
    string(SUBSTRING "${general}" ${listed} -1 list)
    string(REGEX MATCHALL "\n  [a-z]+  " commands "${list}")
endif()
foreach(command IN LISTS commands)
    string(STRIP "${command}" command)
    help_of(said ${command})
    string(TOUPPER ${command} heading)
    string(APPEND page ".SH COMMAND ${heading}\n.nf\n${said}.fi\n")
endforeach()
string(APPEND page ".SH \"EXIT STATUS\"\n0 done; 1 the run ended early; 2 bad input; 3 a fault of the program.\n")
bound_of(pond_mib kPondFileLimit_bytes base/text_file.h)
bound_of(csv_mib kCsvFileLimit_bytes base/text_file.h)
bound_of(tables kMostTables pond/pond_keys.h)
bound_of(ramps kMostRamps pond/pond_keys.h)
bound_of(list kLongestList pond/pond_keys.h)
bound_of(text_bytes kLongestText_bytes pond/pond_keys.h)
bound_of(rows kMostCsvRows pond/csv.h)
bound_of(cells kMostCsvCells pond/csv.h)
bound_of(cell_bytes kLongestCell_bytes pond/csv.h)
bound_of(bundle_mib kLargestBundle_bytes output/bundle.h)
bound_of(unpacked_mib kMostUnpacked_bytes output/bundle.h)
bound_of(in_bundle_mib kLargestInBundle_bytes output/bundle.h)
bound_of(days kMostDays run/run_bounds.h)
bound_of(layer_days kMostLayerDays run/run_bounds.h)
bound_of(member_layer_days kMostMemberLayerDays run/run_bounds.h)
bound_of(members kMostMembers ensemble/ensemble.h)
string(APPEND page ".SH BOUNDS\nWhat is larger is refused at once, in a sentence.\n.TP\nPond file\n${pond_mib} MiB; ${tables} "
    "tables of one name, ${ramps} ramps, ${list} values in a list, ${text_bytes} bytes in a text. A pond that can be opened can "
    "be saved and opened again.\n.TP\nCSV file\n${csv_mib} MiB, ${rows} rows, ${cells} cells, ${cell_bytes} bytes in a cell.\n"
    ".TP\nBundle\n${bundle_mib} MiB packed and ${unpacked_mib} MiB unpacked, "
    "of which a block at a time is in memory; ${in_bundle_mib} MiB of a paper or an input in it.\n.TP\nRun\n${days} days and ${members} members; runs times days times "
    "layers up to ${layer_days}, which takes about 1.2 GB, and that times members up to ${member_layer_days} (more with steps "
    "under 600 s), which takes a night on two processors.\n")
string(APPEND page ".SH CAUTIONS\nThe output compares plans under stated assumptions and is no prediction of survival.\n")
file(WRITE ${OUT} "${page}")
