# What the host projects here have in common.
enable_testing()

# Ours must not reach the host's own compile lines.
function(expect_no_flags)
  set(waiting assay::core)
  while(waiting)
    list(POP_FRONT waiting target)
    if(NOT TARGET ${target} OR NOT target MATCHES "^assay")
      continue()
    endif()
    get_target_property(options ${target} INTERFACE_COMPILE_OPTIONS)
    get_target_property(definitions ${target} INTERFACE_COMPILE_DEFINITIONS)
    get_target_property(features ${target} INTERFACE_COMPILE_FEATURES)
    if(options OR definitions
       OR (features AND NOT features STREQUAL "cxx_std_17"))
      message(FATAL_ERROR
        "${target} forces: ${options} ${definitions} ${features}")
    endif()
    get_target_property(used ${target} INTERFACE_LINK_LIBRARIES)
    if(used)
      list(APPEND waiting ${used})
    endif()
  endwhile()
endfunction()

# add_consumer(<standard>): the program, with the warnings of a strict host.
function(add_consumer standard)
  add_executable(consumer ${CMAKE_CURRENT_FUNCTION_LIST_DIR}/consumer.cc)
  target_link_libraries(consumer PRIVATE assay::core)
  target_compile_options(consumer PRIVATE -Wall -Wextra -Wpedantic -Wshadow
    -Wconversion -Wnon-virtual-dtor -Wold-style-cast -Wcast-qual -Werror)
  if(standard EQUAL 20)
    set(value 202002L)
  else()
    set(value 201703L)
  endif()
  target_compile_definitions(consumer PRIVATE ASSAY_EXPECTED_STANDARD=${value})
  set_target_properties(consumer PROPERTIES CXX_STANDARD ${standard}
    CXX_STANDARD_REQUIRED ON CXX_EXTENSIONS OFF)
  add_test(NAME consumer COMMAND consumer)
endfunction()

# For who builds us from our sources: core/ and nothing else.
function(expect_core_alone)
  foreach(target assay_proto assay_server assay assay_c base_tests
          rules_benchmark)
    if(TARGET ${target})
      message(FATAL_ERROR "${target} is built inside a host")
    endif()
  endforeach()
endfunction()
