// Between the core's UTF-8 and the window's strings.
#pragma once

#include "core/words/catalogue.h"

#include <QString>

#include <string>
#include <string_view>

namespace kerfwright {

inline QString toQt(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

inline std::string fromQt(const QString& text) {
    return text.toStdString();
}

/// The name of an entry or a wood inside a sentence: small in English, as it stands in languages
/// that write nouns with a capital or keep names as they are.
inline QString inSentence(const QString& name) {
    return spoken() == nullptr ? name.toLower() : name;
}

/// A count in words: `one` where it is 1, else `many`; both with %1 for the number.
inline QString counted(qsizetype count, const QString& one, const QString& many) {
    return (count == 1 ? one : many).arg(count);
}

}  // namespace kerfwright
