#include "script/number_words.h"

#include <doctest/doctest.h>

#include <string>

using tw::readNumber;

TEST_CASE("numbers are read from one to ninety-nine in words and to four digits") {
  CHECK(readNumber("ONE")->value == 1);
  CHECK(readNumber("nineteen panels")->value == 19);
  CHECK(readNumber("Twenty-One")->value == 21);
  CHECK(readNumber("NINETY NINE")->value == 99);
  CHECK(readNumber("seventeen")->length == 9);
  CHECK(readNumber("1234")->value == 1234);
  CHECK(readNumber("4\u20135")->value == 4);
}

TEST_CASE("words that only begin like a number are none") {
  for (const char* text : {"oneself", "3rd", "12345", "tenth", "", "x1", "sixpence"})
    CHECK_FALSE(readNumber(text).has_value());
}
