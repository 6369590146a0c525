# What is installed, and the Debian package that CPack makes of it.

include(GNUInstallDirs)
set(id org.dawnline.Dawnline)
set(share ${CMAKE_INSTALL_DATADIR})
install(TARGETS dawnline-cli RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR})
install(DIRECTORY ${dawnline_SOURCE_DIR}/scenarios DESTINATION ${share}/dawnline FILES_MATCHING PATTERN "*.toml")
install(FILES ${CMAKE_CURRENT_LIST_DIR}/copyright ${CMAKE_CURRENT_LIST_DIR}/LICENCE.md ${CMAKE_CURRENT_LIST_DIR}/guide.md
    ${CMAKE_CURRENT_LIST_DIR}/tutorial.md ${CMAKE_CURRENT_LIST_DIR}/tutorial_lows.svg
    ${CMAKE_CURRENT_LIST_DIR}/tutorial_night.svg DESTINATION ${share}/doc/dawnline)

# add_man_page TARGET BRIEF
find_program(GZIP gzip REQUIRED)
function(add_man_page target brief)
    set(page ${dawnline_BINARY_DIR}/${target}.1)
    add_custom_command(OUTPUT ${page}.gz
        COMMAND ${CMAKE_COMMAND} -DPROGRAM=$<TARGET_FILE:${target}> -DNAME=${target} "-DBRIEF=${brief}"
            -DVERSION=${dawnline_VERSION} -DENGINE=${dawnline_SOURCE_DIR}/engine -DOUT=${page} -P ${dawnline_SOURCE_DIR}/resources/man.cmake
        COMMAND ${GZIP} -9nkf ${page}
        DEPENDS ${target} ${dawnline_SOURCE_DIR}/resources/man.cmake VERBATIM)
    add_custom_target(${target}_man ALL DEPENDS ${page}.gz)
    install(FILES ${page}.gz DESTINATION ${CMAKE_INSTALL_MANDIR}/man1)
endfunction()
add_man_page(dawnline-cli "compare start-up ramps of pond aeration")
set(pond_page ${dawnline_BINARY_DIR}/dawnline-pond.5)
add_custom_command(OUTPUT ${pond_page}.gz
    COMMAND ${CMAKE_COMMAND} -DPROGRAM=$<TARGET_FILE:dawnline-cli> -DVERSION=${dawnline_VERSION} -DOUT=${pond_page}
        -P ${dawnline_SOURCE_DIR}/resources/pond_man.cmake
    COMMAND ${GZIP} -9nkf ${pond_page}
    DEPENDS dawnline-cli ${dawnline_SOURCE_DIR}/resources/pond_man.cmake
        ${dawnline_SOURCE_DIR}/resources/dawnline-pond.5.in VERBATIM)
add_custom_target(pond_man ALL DEPENDS ${pond_page}.gz)
install(FILES ${pond_page}.gz DESTINATION ${CMAKE_INSTALL_MANDIR}/man5)
set(guide_page ${dawnline_BINARY_DIR}/dawnline-guide.7)
add_custom_command(OUTPUT ${guide_page}.gz
    COMMAND ${CMAKE_COMMAND} -DVERSION=${dawnline_VERSION} -DOUT=${guide_page} -P ${CMAKE_CURRENT_LIST_DIR}/guide_man.cmake
    COMMAND ${GZIP} -9nkf ${guide_page}
    DEPENDS ${CMAKE_CURRENT_LIST_DIR}/guide_man.cmake ${CMAKE_CURRENT_LIST_DIR}/guide.md VERBATIM)
add_custom_target(guide_man ALL DEPENDS ${guide_page}.gz)
install(FILES ${guide_page}.gz DESTINATION ${CMAKE_INSTALL_MANDIR}/man7)

if(TARGET dawnline)
    install(TARGETS dawnline RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR})
    install(FILES ${CMAKE_CURRENT_LIST_DIR}/${id}.desktop DESTINATION ${share}/applications)
    install(FILES ${CMAKE_CURRENT_LIST_DIR}/${id}.metainfo.xml DESTINATION ${share}/metainfo)
    install(FILES ${CMAKE_CURRENT_LIST_DIR}/${id}.mime.xml DESTINATION ${share}/mime/packages RENAME ${id}.xml)
    install(FILES ${CMAKE_CURRENT_LIST_DIR}/icons/dawnline.svg DESTINATION ${share}/icons/hicolor/scalable/apps
        RENAME ${id}.svg)
    add_man_page(dawnline "the oxygen of a pond under start-up ramps of aeration")
endif()

# Debian's changelog, of this version alone.
file(WRITE ${dawnline_BINARY_DIR}/changelog
    "dawnline (${dawnline_VERSION}) unstable; urgency=medium\n\n  * See the history of the source.\n\n"
    " -- The Dawnline authors <authors@dawnline.invalid>  Wed, 25 Nov 2026 12:00:00 +0000\n")
execute_process(COMMAND ${GZIP} -9nkf ${dawnline_BINARY_DIR}/changelog COMMAND_ERROR_IS_FATAL ANY)
install(FILES ${dawnline_BINARY_DIR}/changelog.gz DESTINATION ${share}/doc/dawnline)

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME dawnline)
set(CPACK_PACKAGE_VENDOR "The Dawnline authors")
set(CPACK_PACKAGE_CONTACT "The Dawnline authors <authors@dawnline.invalid>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "compare start-up ramps of pond aeration by the oxygen at dawn")
set(CPACK_DEBIAN_PACKAGE_DESCRIPTION
"Computes how the dissolved oxygen of a pond would go, hour by hour, under
different start-up ramps of bottom-diffused aeration, and without any: a
window for consultants and a command line. The output compares plans under
stated assumptions and is no prediction of survival.")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
# The papers' type, and what Qt loads at run time to open a window.
set(CPACK_DEBIAN_PACKAGE_DEPENDS "fonts-lato, qt6-qpa-plugins")
set(CPACK_DEBIAN_PACKAGE_SECTION science)
set(CPACK_DEBIAN_PACKAGE_PRIORITY optional)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS
    OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE WORLD_READ WORLD_EXECUTE)
include(CPack)
