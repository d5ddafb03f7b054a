#include "app/cli/program.h"

int main(int argc, char **argv) { return boltwright::app::run(argc, argv); }
