// The one main() that every unit-test program shares. Property tests run with a fixed seed so
// that a check gives the same answer twice; set RC_PARAMS to look for new counter-examples.
#define DOCTEST_CONFIG_IMPLEMENT
#include <doctest/doctest.h>

#include <cstdlib>

int main(int argc, char** argv) {
  setenv("RC_PARAMS", "seed=20261125", /*overwrite=*/0);
  // So that a build folder outside the source finds the presets too.
  setenv("TIERWRIGHT_PRESETS", TIERWRIGHT_SOURCE_DIR "/presets", /*overwrite=*/0);
  return doctest::Context(argc, argv).run();
}
