// The wish: all that the maker types about the board and the shop.
#pragma once

#include "core/glueup/figure.h"
#include "ui/document/planner.h"
#include "ui/window/boardeditor.h"

#include <QScrollArea>

#include <functional>
#include <optional>

QT_BEGIN_NAMESPACE
class QCheckBox;
class QLabel;
class QVBoxLayout;
QT_END_NAMESPACE

namespace kerfwright {

class BorderForm;
class CountField;
class EntryField;
class FaultNote;
class LengthField;
class FormSection;
class GlueForm;
class PlaceForm;
class RatesForm;
class Segmented;
class WoodList;
class WrappedLabel;
class ShopForm;
class TextField;
class UnitForm;

class WishForm : public QScrollArea {
    Q_OBJECT

public:
    WishForm(Document& document, Planner& planner, BoardEditor& editor, QWidget* parent = nullptr);

    /// Opens what holds the entry that a term of a working comes from, and puts the cursor there.
    void focusTerm(TermKind kind);
    /// Opens the entry for the price of the wood with that name.
    void showPrice(const QString& wood);
    /// The same for the rate of a time at the bench, or the glue's setting of that key.
    void focusRate(const QString& key);

Q_SIGNALS:
    void previewed(const ProjectPtr& project);

private:
    void buildTitles();
    void buildSize();
    void buildBuild(FormSection* size);
    void buildSquares(FormSection* size);
    void buildCounts(FormSection* size);
    void buildWoods();
    void buildChoices();
    void buildPlace();
    void buildShop();
    void buildUnits();
    void showFocused();
    void refresh();
    void refreshSize();
    /// Changes the field from what it was when the entry in hand began to be edited: the first
    /// digit of a number is no wish of its own, and must cost neither painting nor proportion.
    QString reshape(const QString& what, int entry, const std::function<void(Project&)>& how);
    FormSection* section(const QString& title, const char* topic, bool folds);
    void rule();
    void watch(EntryField* field);

    Document& document_;
    Planner& planner_;
    BoardEditor& editor_;
    QWidget* content_;
    QVBoxLayout* column_;

    TextField* name_ = nullptr;
    TextField* maker_ = nullptr;
    TextField* date_ = nullptr;
    TextField* note_ = nullptr;
    Segmented* build_ = nullptr;
    Segmented* grain_ = nullptr;
    QLabel* squares_ = nullptr;
    LengthField* cellWidth_ = nullptr;
    LengthField* cellHeight_ = nullptr;
    CountField* across_ = nullptr;
    CountField* down_ = nullptr;
    LengthField* thickness_ = nullptr;
    FaultNote* fieldNote_ = nullptr;
    BorderForm* border_ = nullptr;
    PlaceForm* place_ = nullptr;
    GlueForm* glue_ = nullptr;
    RatesForm* rates_ = nullptr;
    ShopForm* shop_ = nullptr;
    FormSection* woodSection_ = nullptr;
    WoodList* woods_ = nullptr;
    WrappedLabel* decided_ = nullptr;
    Segmented* rows_ = nullptr;
    QCheckBox* merge_ = nullptr;
    UnitForm* units_ = nullptr;
    std::optional<Field> began_;         ///< the field when the entry in hand began to be edited
    std::optional<Recipe> beganRecipe_;  ///< and its recipe, which half a number must not cost
    Field reshaped_;                     ///< what it was made of that since
};

}  // namespace kerfwright
