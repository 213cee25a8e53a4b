// The numbers and woods of the recipe that the field was laid from; changing one lays it anew.
#pragma once

#include "ui/document/document.h"

#include <QToolButton>
#include <QWidget>

#include <functional>
#include <map>
#include <vector>

QT_BEGIN_NAMESPACE
class QLabel;
class QVBoxLayout;
QT_END_NAMESPACE

namespace kerfwright {

class CountField;
class EntryField;
class FaultNote;
class FormSection;
class LengthField;

/// The wood of one role; a click opens the list of the project's woods.
class RoleButton : public QToolButton {
    Q_OBJECT

public:
    RoleButton(const QString& role, QWidget* parent);
    void show(const std::vector<Wood>& woods, int wood);
    QString role() const { return role_; }

Q_SIGNALS:
    void chosen(int wood);

private:
    void open();

    QString role_;
    std::vector<Wood> woods_;
    int wood_ = -1;
};

class RecipeForm : public QWidget {
    Q_OBJECT

public:
    /// What takes the focus comes after `before` in the order of the tab key.
    RecipeForm(Document& document, QWidget* before, QWidget* parent);

private:
    /// Of one pattern. Made when it is first laid, and kept: an entry must not go while it is typed
    /// in.
    struct Fields {
        FormSection* rows = nullptr;
        FaultNote* words = nullptr;
        std::vector<CountField*> counts;
        std::vector<LengthField*> lengths;
        LengthField* width = nullptr;
        LengthField* height = nullptr;
        std::vector<RoleButton*> roles;
    };

    Fields& fieldsOf(Pattern pattern);
    void addCounts(Fields& fields, const PatternInfo& info);
    void addLengths(Fields& fields, const PatternInfo& info);
    void addRoles(Fields& fields, const PatternInfo& info);
    LengthField* lengthField(Fields& fields, const PatternInfo& info, const QString& name,
                             const QString& key, int entry,
                             const std::function<void(Recipe&, Length)>& how);
    void joinTabs(const Fields& fields);
    void watch(EntryField* field, Fields& fields, const QString& object);
    /// Lays the field anew. The fault in words, or nothing.
    QString change(const QString& what, int entry, const std::function<void(Recipe&)>& how);
    void refresh();

    Document& document_;
    QWidget* before_;
    QVBoxLayout* column_;
    QLabel* name_;
    QLabel* about_;
    QString lastName_;  ///< of the pattern that was in force before, while the project is the same
    std::map<Pattern, Fields> fields_;
};

}  // namespace kerfwright
