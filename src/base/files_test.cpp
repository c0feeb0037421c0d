#include "base/files.h"

#include <doctest/doctest.h>
#include <fcntl.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <cstdlib>

#include "base/scratch_folder.h"

using namespace tw;
namespace fs = std::filesystem;

namespace {

std::size_t entriesIn(const fs::path& folder) {
  std::size_t count = 0;
  for (fs::directory_iterator entry(folder), end; entry != end; ++entry) ++count;
  return count;
}

/// Rewrites the file with a long text of one letter, another letter each time, for ever.
[[noreturn]] void writeForEver(const fs::path& file) {
  for (char letter = 'a';; letter = letter == 'z' ? 'a' : static_cast<char>(letter + 1))
    if (!writeFileAtomically(file, std::string(300000, letter))) ::_exit(1);
}

}  // namespace

TEST_CASE("bytes come back as they were written, zero bytes and all") {
  const ScratchFolder scratch;
  const std::string bytes("a\0b\r\n\xFF", 6);
  REQUIRE(writeFileAtomically(scratch / "new/deep/file", bytes));
  CHECK(readFile(scratch / "new/deep/file").value() == bytes);
  REQUIRE(writeFileAtomically(scratch / "new/deep/file", ""));
  CHECK(readFile(scratch / "new/deep/file").value() == "");
}

TEST_CASE("writing leaves nothing beside the file") {
  const ScratchFolder scratch;
  for (int i = 0; i < 5; ++i) REQUIRE(writeFileAtomically(scratch / "file", std::to_string(i)));
  CHECK(entriesIn(scratch.path()) == 1);
}

TEST_CASE("a writer that is killed leaves the old file or the new one, whole") {
  const ScratchFolder scratch;
  const fs::path file = scratch / "file";
  REQUIRE(writeFileAtomically(file, std::string(300000, '-')));
  for (int round = 0; round < 12; ++round) {
    const pid_t writer = ::fork();
    if (writer == 0) writeForEver(file);
    REQUIRE(writer > 0);
    ::usleep(static_cast<useconds_t>(1000 + 1700 * round));
    ::kill(writer, SIGKILL);
    ::waitpid(writer, nullptr, 0);
    const std::string found = readFile(file).value();
    CHECK(found == std::string(300000, found.at(0)));
  }
}

TEST_CASE("a write that the disk refuses half way leaves the old file and no rest") {
  const ScratchFolder scratch;
  const fs::path file = scratch / "file";
  REQUIRE(writeFileAtomically(file, "the old state"));
  const pid_t writer = ::fork();
  if (writer == 0) {  // in a child, so that the limit does not reach the other tests
    ::signal(SIGXFSZ, SIG_IGN);
    const rlimit limit{1000, 1000};
    ::setrlimit(RLIMIT_FSIZE, &limit);
    const auto written = writeFileAtomically(file, std::string(5000, 'n'));
    ::_exit(written || written.error()[0].cause != Cause::OurFault ? 1 : 0);
  }
  int status = 0;
  ::waitpid(writer, &status, 0);
  CHECK(WIFEXITED(status));
  CHECK(WEXITSTATUS(status) == 0);
  CHECK(readFile(file).value() == "the old state");
  CHECK(entriesIn(scratch.path()) == 1);
}

TEST_CASE("the permission bits of a file outlive its replacement") {
  const ScratchFolder scratch;
  REQUIRE(writeFileAtomically(scratch / "file", "1"));
  fs::permissions(scratch / "file", fs::perms::owner_read | fs::perms::owner_write);
  REQUIRE(writeFileAtomically(scratch / "file", "2"));
  CHECK(fs::status(scratch / "file").permissions() ==
        (fs::perms::owner_read | fs::perms::owner_write));
}

TEST_CASE("a file over the size limit is refused with both sizes") {
  const ScratchFolder scratch;
  REQUIRE(writeFileAtomically(scratch / "file", std::string(101, 'x')));
  CHECK(readFile(scratch / "file", 101));
  const auto refused = readFile(scratch / "file", 100);
  REQUIRE_FALSE(refused);
  CHECK(refused.error()[0].cause == Cause::BadInput);
  CHECK(refused.error()[0].sentence.find("101 bytes; at most 100") != std::string::npos);
}

TEST_CASE("a sparse file of 100 MB is refused without being read") {
  const ScratchFolder scratch;
  REQUIRE(writeFileAtomically(scratch / "file", "x"));
  fs::resize_file(scratch / "file", 100u << 20);
  CHECK_FALSE(readFile(scratch / "file"));
}

TEST_CASE("what is not a file is refused with a sentence") {
  const ScratchFolder scratch;
  CHECK(readFile(scratch / "nowhere").error()[0].sentence == "The file does not exist.");
  CHECK(readFile(scratch.path()).error()[0].sentence == "This is not a file.");
  CHECK(readFile("/dev/zero").error()[0].sentence == "This is not a file.");
}

TEST_CASE("a file that cannot be written is our fault and names the file") {
  const auto written = writeFileAtomically("/proc/no-such-place/file", "x");
  REQUIRE_FALSE(written);
  CHECK(written.error()[0].cause == Cause::OurFault);
  CHECK(written.error()[0].place.file == "/proc/no-such-place/file");
}

TEST_CASE("a name below a file or of a folder is bad input") {
  const ScratchFolder scratch;
  REQUIRE(writeFileAtomically(scratch / "file", "x"));
  fs::create_directories(scratch / "folder/in it");
  for (const char* name : {"file/below", "folder"}) {
    const auto written = writeFileAtomically(scratch / name, "x");
    REQUIRE_FALSE(written);
    CHECK(written.error()[0].cause == Cause::BadInput);
  }
  CHECK(readFile(scratch / "file") == "x");
}

TEST_CASE("presets are looked for first where the environment says") {
  const ScratchFolder scratch;
  REQUIRE(writeFileAtomically(scratch / "sheets/test-only.json", "{}"));
  const char* before = std::getenv("TIERWRIGHT_PRESETS");
  const std::string kept = before ? before : "";
  ::setenv("TIERWRIGHT_PRESETS", scratch.path().c_str(), 1);
  const auto found = presetPath("sheets/test-only.json");
  before ? ::setenv("TIERWRIGHT_PRESETS", kept.c_str(), 1) : ::unsetenv("TIERWRIGHT_PRESETS");
  REQUIRE(found);
  CHECK(*found == scratch / "sheets/test-only.json");
  const auto missing = presetPath("sheets/test-only.json");
  REQUIRE_FALSE(missing);
  CHECK(missing.error()[0].advice.find("TIERWRIGHT_PRESETS") != std::string::npos);
}
