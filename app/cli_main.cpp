#include <CLI/CLI.hpp>

int main(int argc, char** argv) {
    CLI::App app{"Dissolved oxygen of a pond under start-up ramps of bottom aeration."};
    app.set_version_flag("--version", "dawnline-cli " DAWNLINE_VERSION);
    CLI11_PARSE(app, argc, argv);
    return 0;
}
