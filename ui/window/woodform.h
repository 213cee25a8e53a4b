// All that the project says of one wood, opened beside a button: the timber it is to be had in, how
// it looks, weighs, moves and glues, and where each value is from.
#pragma once

#include "ui/document/document.h"

#include <QFrame>

#include <functional>
#include <vector>

QT_BEGIN_NAMESPACE
class QLabel;
class QScrollArea;
class QVBoxLayout;
QT_END_NAMESPACE

namespace kerfwright {

class EntryField;
class FaultNote;
class FormSection;
class LengthField;
class TextField;

class WoodForm : public QFrame {
    Q_OBJECT

public:
    /// `wood` is an index into the project's woods. Deletes itself when it is closed.
    WoodForm(Document& document, int wood, QWidget* parent);
    void openBeside(QWidget* button);
    /// For a wood that was just added: its name is what comes first.
    void focusName();
    void focusPrice();

protected:
    void hideEvent(QHideEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    using Change = std::function<void(Wood&)>;

    void buildTimber();
    void buildLooks();
    void buildWeight();
    void buildMovement();
    void buildGlue();
    void buildHealth();
    FormSection* section(const QString& title);
    void addEntry(FormSection* section, const QString& label, EntryField* field, const char* name);
    LengthField* addLength(FormSection* section, const QString& label, const char* name,
                           Length Section::*member);
    TextField* addText(FormSection* section, const QString& label, const char* name,
                       std::string Wood::*member);
    /// A number of which 0 means that nobody knows.
    template <class Member>
    void addNumber(FormSection* section, const QString& label, const QString& unit, double greatest,
                   const char* name, Member member);
    template <class Value>
    void addChoice(FormSection* section, const QString& label, const char* name,
                   const QStringList& choices, Value Wood::*member);
    template <class Member>
    void addSource(FormSection* section, Member member);
    void addColour(FormSection* section);
    void addPrice(FormSection* section);
    /// Another number for the undo steps of another entry.
    int nextEntry() { return entries_++; }
    /// Changes the wood and sees to its sources. Returns the fault in words.
    QString change(const QString& what, int entry, const Change& how);
    void refresh();

    Document& document_;
    int wood_;
    int entries_ = 0;
    QScrollArea* scroll_;
    QVBoxLayout* column_;
    QLabel* chip_;
    QLabel* head_;
    LengthField* thickness_ = nullptr;
    TextField* name_ = nullptr;
    TextField* price_ = nullptr;
    std::vector<std::function<void(const Project&, const Wood&)>> shown_;  ///< one for each row
};

}  // namespace kerfwright
