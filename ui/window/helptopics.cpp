#include "ui/window/helptopics.h"

#include <QFile>
#include <QTabWidget>
#include <QVariant>
#include <QWidget>

#include <algorithm>
#include <array>

namespace kerfwright {

namespace {

constexpr const char* topicProperty = "helpTopic";

constexpr std::array orderOfTopics{
    "first-steps", "drawing", "patterns", "sizes",    "woods",     "border",   "season",
    "shop",        "glue",    "hours",    "steps",    "following", "cautions", "cut-list",
    "rack",        "cuts",    "shopping", "boards",   "ways",      "sheets",   "price",
    "batch",       "records", "film",     "keyboard", "safety"};

struct ClassTopic {
    const char* name;
    const char* topic;
};
/// Parts of the window that are about one thing wherever they stand.
constexpr std::array classTopics{
    ClassTopic{"BoardView", "drawing"},      ClassTopic{"BoardFoot", "drawing"},
    ClassTopic{"MarkBar", "drawing"},        ClassTopic{"RegionBar", "drawing"},
    ClassTopic{"ChipBar", "woods"},          ClassTopic{"SeasonBar", "season"},
    ClassTopic{"MovementBox", "season"},     ClassTopic{"PatternPicker", "patterns"},
    ClassTopic{"RecipeForm", "patterns"},    ClassTopic{"WoodList", "woods"},
    ClassTopic{"WoodForm", "woods"},         ClassTopic{"WoodChooser", "woods"},
    ClassTopic{"WishForm", "sizes"},         ClassTopic{"StepsPanel", "steps"},
    ClassTopic{"HoursBox", "hours"},         ClassTopic{"CutList", "cut-list"},
    ClassTopic{"RackPage", "rack"},          ClassTopic{"PlankEditor", "rack"},
    ClassTopic{"CutsView", "cuts"},          ClassTopic{"SawingForm", "cuts"},
    ClassTopic{"BuyPage", "shopping"},       ClassTopic{"BoardsPage", "boards"},
    ClassTopic{"TimberPanel", "cuts"},       ClassTopic{"WaysPanel", "ways"},
    ClassTopic{"SheetsPanel", "sheets"},     ClassTopic{"PricePanel", "price"},
    ClassTopic{"BatchDialog", "batch"},      ClassTopic{"StageRow", "film"},
    ClassTopic{"StageView", "film"},         ClassTopic{"SpotlightNote", "following"},
    ClassTopic{"WorkingPopup", "shop"},      ClassTopic{"TotalsBar", "price"},
    ClassTopic{"Gallery", "first-steps"},    ClassTopic{"TourBubble", "first-steps"},
    ClassTopic{"MainWindow", "first-steps"},
};

QString read(const QString& language, const QString& key) {
    QFile file(QStringLiteral(":/help/%1/%2.md").arg(language, key));
    return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
}

}  // namespace

QStringList helpTopicKeys() {
    QStringList keys;
    for (const char* key : orderOfTopics) {
        keys << QString::fromLatin1(key);
    }
    return keys;
}

HelpBook::HelpBook(const QString& language) {
    for (const QString& key : helpTopicKeys()) {
        QString text = read(language, key);
        if (text.isEmpty()) {
            text = read(QStringLiteral("en"), key);
        }
        const qsizetype end = text.indexOf(QLatin1Char('\n'));
        topics_.push_back({key, text.left(end).mid(2).trimmed(), text.mid(end).trimmed()});
    }
}

int HelpBook::indexOf(const QString& key) const {
    for (std::size_t i = 0; i < topics_.size(); ++i) {
        if (topics_[i].key == key) {
            return static_cast<int>(i);
        }
    }
    return -1;
}

std::vector<int> HelpBook::search(const QString& words) const {
    const QStringList wanted = words.simplified().split(QLatin1Char(' '), Qt::SkipEmptyParts);
    const auto hasAll = [&](const QString& text) {
        return std::all_of(wanted.begin(), wanted.end(), [&](const QString& word) {
            return text.contains(word, Qt::CaseInsensitive);
        });
    };
    std::vector<int> first;
    std::vector<int> second;
    for (std::size_t i = 0; i < topics_.size(); ++i) {
        const HelpTopic& topic = topics_[i];
        if (hasAll(topic.title)) {
            first.push_back(static_cast<int>(i));
        } else if (hasAll(topic.title + QLatin1Char('\n') + topic.text)) {
            second.push_back(static_cast<int>(i));
        }
    }
    first.insert(first.end(), second.begin(), second.end());
    return first;
}

void setHelpTopic(QWidget* widget, const char* topic) {
    widget->setProperty(topicProperty, QString::fromLatin1(topic));
}

QString helpTopicOf(const QWidget* widget) {
    for (; widget != nullptr; widget = widget->parentWidget()) {
        const QVariant own = widget->property(topicProperty);
        if (own.isValid()) {
            return own.toString();
        }
        // The tabs themselves are about the page that is open.
        if (const auto* tabs = qobject_cast<const QTabWidget*>(widget)) {
            const QWidget* page = tabs->currentWidget();
            const QVariant topic = page != nullptr ? page->property(topicProperty) : QVariant();
            if (topic.isValid()) {
                return topic.toString();
            }
        }
        for (const QMetaObject* type = widget->metaObject(); type != nullptr;
             type = type->superClass()) {
            const QByteArray name = QByteArray(type->className()).replace("kerfwright::", "");
            const auto known =
                std::find_if(classTopics.begin(), classTopics.end(),
                             [&](const ClassTopic& each) { return name == each.name; });
            if (known != classTopics.end()) {
                return QString::fromLatin1(known->topic);
            }
        }
    }
    return QString::fromLatin1(orderOfTopics.front());
}

}  // namespace kerfwright
