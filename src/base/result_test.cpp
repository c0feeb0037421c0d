#include "base/result.h"

#include <doctest/doctest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <cstdio>

#include "base/progress.h"

using namespace tw;

TEST_CASE("a problem says file, line, path, page and panel, then the sentence and the advice") {
  CHECK(describe(Problem{Cause::BadInput, "Wrong.", {.file = "a.txt", .line = 3}, "Do this."}) ==
        "a.txt:3: Wrong. Do this.");
  CHECK(describe(Problem{Cause::BadInput, "Wrong.", {.file = "p.json", .path = "/beats/0"}, ""}) ==
        "p.json at /beats/0: Wrong.");
  CHECK(describe(Problem{
            Cause::BadInput, "Wrong.", {.file = "s.txt", .line = 9, .page = 3, .panel = 2}, ""}) ==
        "s.txt:9, page 3, panel 2: Wrong.");
}

TEST_CASE("what is not known of a place is left out") {
  CHECK(describe(Problem{Cause::OurFault, "Wrong.", {}, ""}) == "Wrong.");
  CHECK(describe(Problem{Cause::BadInput, "Wrong.", {.page = 4}, ""}) == "page 4: Wrong.");
  CHECK(describe(Problem{Cause::BadInput, "Wrong.", {.path = "/a"}, ""}) == "at /a: Wrong.");
}

TEST_CASE("several problems are a line each") {
  const Problems problems = {{Cause::BadInput, "One.", {}, ""}, {Cause::BadInput, "Two.", {}, ""}};
  CHECK(describe(problems) == "One.\nTwo.\n");
  CHECK(describe(Problems{}) == "");
}

TEST_CASE("each way to fail carries its cause") {
  CHECK(Result<int>(badInput("x")).error()[0].cause == Cause::BadInput);
  CHECK(Result<int>(ourFault("x")).error()[0].cause == Cause::OurFault);
  CHECK(Result<int>(stopped()).error()[0].cause == Cause::Stopped);
}

TEST_CASE("a broken promise ends the program, a kept one does not") {
  ensure(true, "this holds");
  const pid_t child = ::fork();
  if (child == 0) {
    ::signal(SIGABRT, SIG_DFL);  // the test frame's own handler would report it
    if (!std::freopen("/dev/null", "w", stderr)) ::_exit(0);
    ensure(false, "this does not hold");
    ::_exit(0);
  }
  int status = 0;
  ::waitpid(child, &status, 0);
  REQUIRE(WIFSIGNALED(status));
  CHECK(WTERMSIG(status) == SIGABRT);
}

TEST_CASE("progress tells what it is told and remembers that it was stopped") {
  std::string heard;
  double share = 0;
  Progress progress([&](std::string_view what, double s) {
    heard = what;
    share = s;
  });
  progress.tell("sizing", 0.25);
  CHECK(heard == "sizing");
  CHECK(share == 0.25);
  CHECK_FALSE(progress.isStopped());
  progress.stop();
  CHECK(progress.isStopped());
  Progress().tell("nobody listens", 1);
}
