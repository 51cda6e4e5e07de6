#include "assay/lesson/markup.h"

namespace assay {

std::string Escaped(std::string_view text) {
  std::string safe;
  safe.reserve(text.size());
  for (const char c : text) {
    switch (c) {
      case '&':
        safe += "&amp;";
        break;
      case '<':
        safe += "&lt;";
        break;
      case '>':
        safe += "&gt;";
        break;
      case '"':
        safe += "&quot;";
        break;
      case '\'':
        safe += "&#39;";
        break;
      default:
        if (static_cast<unsigned char>(c) >= 0x20 || c == '\n') safe += c;
    }
  }
  return safe;
}

std::string Element(std::string_view name, std::string_view css_class,
                    std::string_view text) {
  const std::string tag(name);
  std::string open = "<" + tag;
  if (!css_class.empty()) open += " class=\"" + std::string(css_class) + "\"";
  return open + ">" + Escaped(text) + "</" + tag + ">\n";
}

}  // namespace assay
