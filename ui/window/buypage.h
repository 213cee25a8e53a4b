// What to buy where the rack does not suffice, and what the yard has to sell and how it counts.
#pragma once

#include "ui/document/sawyer.h"

#include <QWidget>

#include <functional>
#include <vector>

QT_BEGIN_NAMESPACE
class QComboBox;
class QLabel;
QT_END_NAMESPACE

namespace kerfwright {

class CardList;
class FormSection;
class TextField;

/// "19; 26; 32" in the notation, each exact or marked as rounded.
QString listOfLengths(const std::vector<Length>& lengths, const Notation& notation);
/// Lengths parted by semicolons, or by a comma and a space; sorted, each once. Faults name `entry`.
Result<std::vector<Length>> lengthsOf(const QString& text, const Notation& notation,
                                      const QString& entry);

class BuyPage : public QWidget {
    Q_OBJECT

public:
    BuyPage(Document& document, Sawyer& sawyer, QWidget* parent = nullptr);
    CardList* list() const { return list_; }

private:
    void buildYard();
    void addLengths(const QString& label, const char* name, std::vector<Length> Yard::*which,
                    int entry);
    void refresh();

    Document& document_;
    Sawyer& sawyer_;
    QLabel* words_;
    CardList* list_;
    FormSection* yard_;
    QComboBox* tally_ = nullptr;
    QLabel* about_ = nullptr;
    std::vector<std::pair<TextField*, std::vector<Length> Yard::*>> lengths_;
    SawnPtr shown_;
};

}  // namespace kerfwright
