// The two small windows of the Help menu.
#pragma once

#include <QtGlobal>

QT_BEGIN_NAMESPACE
class QMenuBar;
class QWidget;
QT_END_NAMESPACE

namespace kerfwright {

/// What is in the menus, with its keys, and what keys do besides.
void showKeys(const QMenuBar& menus, QWidget* parent);
void showAbout(QWidget* parent);

}  // namespace kerfwright
