#include "ui/document/language.h"

#include "core/words/catalogue.h"
#include "ui/document/text.h"

#include <QCoreApplication>
#include <QFile>
#include <QLibraryInfo>
#include <QLocale>
#include <QSettings>
#include <QTranslator>

#include <algorithm>
#include <memory>

static void initWords() {
    // A static library's resources are linked in only where they are asked for.
    Q_INIT_RESOURCE(kw_words);
}

namespace kerfwright {
namespace {

const QString choiceKey = QStringLiteral("language");
const QString english = QStringLiteral("en");

/// Hands the window's sentences to the same catalogue that the core speaks from.
class CatalogueTranslator : public QTranslator {
public:
    using QTranslator::QTranslator;

    bool isEmpty() const override { return spoken() == nullptr; }

    QString translate(const char* /*context*/, const char* text, const char* disambiguation,
                      int /*count*/) const override {
        const Catalogue* words = spoken();
        if (words == nullptr || text == nullptr) {
            return {};
        }
        const std::string_view found =
            words->find(disambiguation != nullptr ? disambiguation : "", text);
        return found.empty() ? QString() : toQt(found);
    }
};

}  // namespace

QList<SpokenLanguage> languages() {
    return {{english, QStringLiteral("English")},
            {QStringLiteral("de"), QStringLiteral("Deutsch")}};
}

QString languageChoice() {
    return QSettings().value(choiceKey).toString();
}

void setLanguageChoice(const QString& code) {
    QSettings settings;
    if (code.isEmpty()) {
        settings.remove(choiceKey);
    } else {
        settings.setValue(choiceKey, code);
    }
}

QString languageToSpeak() {
    const QList<SpokenLanguage> all = languages();
    const auto known = [&all](const QString& code) {
        return std::any_of(all.begin(), all.end(),
                           [&code](const SpokenLanguage& one) { return one.code == code; });
    };
    if (const QString choice = languageChoice(); known(choice)) {
        return choice;
    }
    for (const QString& wish : QLocale::system().uiLanguages()) {
        if (const QString code = wish.section(u'-', 0, 0); known(code)) {
            return code;
        }
    }
    return english;
}

void speakLanguage(const QString& code) {
    initWords();
    QFile file(QStringLiteral(":/words/%1.mo").arg(code));
    std::optional<Catalogue> words;
    if (file.open(QIODevice::ReadOnly)) {
        const QByteArray bytes = file.readAll();
        words = Catalogue::read({bytes.constData(), static_cast<std::size_t>(bytes.size())});
    }
    speak(words ? std::make_shared<const Catalogue>(std::move(*words)) : nullptr);
}

void translateApplication(QCoreApplication& application) {
    if (spoken() == nullptr) {
        return;
    }
    QCoreApplication::installTranslator(new CatalogueTranslator(&application));
    auto* qt = new QTranslator(&application);
    if (qt->load(QLocale(languageToSpeak()), QStringLiteral("qtbase"), QStringLiteral("_"),
                 QLibraryInfo::path(QLibraryInfo::TranslationsPath))) {
        QCoreApplication::installTranslator(qt);
    }
}

}  // namespace kerfwright
