#include "cli/terminal.h"

int main(int argc, char** argv) {
  return tw::runTerminal(argc, argv);
}
