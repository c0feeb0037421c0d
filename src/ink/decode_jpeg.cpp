// JPEG by libjpeg's classic interface. The library leaves through a long jump when it fails, so
// nothing with a destructor lives in the function that can be left that way. Its warning that
// data ended early is taken as a cut-off file.
#include <cstddef>
#include <cstdio>
// jpeglib.h needs the two above.
#include <fmt/format.h>
#include <jerror.h>
#include <jpeglib.h>

#include <csetjmp>
#include <optional>

#include "ink/decode_picture.h"

namespace tw {

namespace {

/// A progressive file of more scans than this is made to waste time; writers use about ten.
constexpr int kMostScans = 200;

struct Reading {
  jpeg_decompress_struct codec{};
  jpeg_error_mgr errors{};
  jpeg_progress_mgr progress{};
  std::jmp_buf out{};
  bool cutOff = false;
  bool inks = false;  ///< CMYK
  char message[JMSG_LENGTH_MAX]{};
  std::optional<LightGatherer> gatherer;
  std::vector<JSAMPLE> samples;
  std::vector<Rgba> row;
};

Reading& readingOf(j_common_ptr codec) {
  return *static_cast<Reading*>(codec->client_data);
}

[[noreturn]] void leave(j_common_ptr codec) {
  Reading& reading = readingOf(codec);
  codec->err->format_message(codec, reading.message);
  std::longjmp(reading.out, 1);
}

void noteWarning(j_common_ptr codec, int level) {
  if (level >= 0) return;  // a trace
  const int code = codec->err->msg_code;
  if (code == JWRN_JPEG_EOF || code == JWRN_HIT_MARKER) readingOf(codec).cutOff = true;
}

void stayQuiet(j_common_ptr) {}

void countScans(j_common_ptr codec) {
  if (reinterpret_cast<j_decompress_ptr>(codec)->input_scan_number <= kMostScans) return;
  Reading& reading = readingOf(codec);
  std::snprintf(reading.message, sizeof reading.message, "more than %d scans", kMostScans);
  std::longjmp(reading.out, 1);
}

void prepare(Reading& r) {
  r.codec.err = jpeg_std_error(&r.errors);
  r.errors.error_exit = leave;
  r.errors.emit_message = noteWarning;
  r.errors.output_message = stayQuiet;
  r.codec.client_data = &r;
  r.progress.progress_monitor = countScans;
}

void takeRow(Reading& r) {
  const JSAMPLE* s = r.samples.data();
  for (Rgba& c : r.row) {
    c = {s[0], s[1], s[2], 255};
    s += 3;
  }
  r.gatherer->addRow(r.row);
}

/// False when the library left. Everything it needs lives in `r`.
bool decode(Reading& r, std::string_view bytes, int mostSide) {
  if (setjmp(r.out) != 0) return false;
  jpeg_create_decompress(&r.codec);
  r.codec.client_data = &r;
  r.codec.progress = &r.progress;
  jpeg_mem_src(&r.codec, reinterpret_cast<const unsigned char*>(bytes.data()),
               static_cast<unsigned long>(bytes.size()));
  jpeg_read_header(&r.codec, TRUE);
  r.inks = r.codec.num_components == 4;
  if (r.inks) return true;
  r.codec.out_color_space = JCS_RGB;
  jpeg_start_decompress(&r.codec);
  r.gatherer.emplace(static_cast<int>(r.codec.output_width),
                     static_cast<int>(r.codec.output_height), mostSide);
  r.samples.resize(std::size_t{3} * r.codec.output_width);
  r.row.resize(r.codec.output_width);
  while (r.codec.output_scanline < r.codec.output_height) {
    JSAMPROW rows[1] = {r.samples.data()};
    if (jpeg_read_scanlines(&r.codec, rows, 1) == 1) takeRow(r);
  }
  jpeg_finish_decompress(&r.codec);
  return true;
}

}  // namespace

Result<GreyPicture> decodeJpeg(std::string_view bytes, const std::string& fileName, int mostSide) {
  Reading reading;
  prepare(reading);
  const bool whole = decode(reading, bytes, mostSide);
  jpeg_destroy_decompress(&reading.codec);
  if (reading.inks)
    return refusedPicture("The JPEG is in printing inks (CMYK); grey and RGB can be read.",
                          fileName);
  if (reading.cutOff)
    return refusedPicture("The JPEG is cut off: its data end too early.", fileName);
  if (!whole)
    return refusedPicture(fmt::format("The JPEG is damaged ({}).", reading.message), fileName);
  return reading.gatherer->finished();
}

}  // namespace tw
