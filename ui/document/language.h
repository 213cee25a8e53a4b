// Which language the program speaks: what the maker chose, else the first of the desktop's that
// there are words for, else English.
#pragma once

#include <QStringList>

class QCoreApplication;

namespace kerfwright {

struct SpokenLanguage {
    QString code;  ///< of ISO 639, "de"
    QString name;  ///< in the language itself, "Deutsch"
};
/// English first.
QList<SpokenLanguage> languages();

/// Empty where the maker follows the desktop.
QString languageChoice();
/// Kept for the next start: half of what is on screen was said long ago.
void setLanguageChoice(const QString& code);
/// The code of what is to be spoken, by choice or by the desktop's wish.
QString languageToSpeak();

/// From now on the core says everything in this language; English for a code without words. Call it
/// before anything is said. Needs no application, but its name where the choice is to be found.
void speakLanguage(const QString& code);
/// The window's own words follow what `speakLanguage` set, and so do Qt's where it has a
/// translation.
void translateApplication(QCoreApplication& application);

}  // namespace kerfwright
