#include "base/keep_memory.h"
#include "cli/terminal.h"

int main(int argc, char** argv) {
  tw::keepFreedMemory();
  return tw::runTerminal(argc, argv);
}
