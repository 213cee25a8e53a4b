// Where the board is used and what for: the moisture that its wood has when it is glued and in the
// seasons of its place, typed as such or as temperature and humidity of the air.
#pragma once

#include "core/wood/moisture.h"
#include "ui/document/document.h"

#include <QObject>

#include <vector>

QT_BEGIN_NAMESPACE
class QComboBox;
QT_END_NAMESPACE

namespace kerfwright {

class FaultNote;
class FormSection;
class LengthField;
class NumberField;
class Segmented;

class PlaceForm : public QObject {
    Q_OBJECT

public:
    /// The entries are made when the section is first opened.
    PlaceForm(Document& document, FormSection* section);
    void refresh();
    /// Opens the section and puts the cursor into the moisture that the board is built at.
    void focusSeason();

private:
    struct Season {
        const ClimateSetting* info;
        NumberField* moisture;
        QWidget* air;
        NumberField* degrees;
        NumberField* humidity;
        FaultNote* note;
    };

    void fill();
    void buildUse();
    void buildPlace();
    Season buildSeason(const ClimateSetting& info, int which);
    void refreshUse();
    void refreshSeason(const Season& season);
    QString setMoisture(int which, double moisture);
    /// What wood settles at in the air that is typed for a season.
    QString setFromAir(int which);
    bool byAir() const;

    Document& document_;
    FormSection* section_;
    QComboBox* use_ = nullptr;
    FaultNote* useNote_ = nullptr;
    QWidget* footRow_ = nullptr;
    LengthField* foot_ = nullptr;
    QComboBox* place_ = nullptr;
    Segmented* typed_ = nullptr;
    std::vector<Season> seasons_;
};

}  // namespace kerfwright
