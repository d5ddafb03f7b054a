#pragma once

namespace boltwright::ui {

class Canvas;

/// Makes the panels on the table known to screen readers: each a child of the canvas with name, description and place.
/// Safe to call more than once.
void installCanvasAccessibility();
/// Tells them which panel is selected now.
void announceSelection(Canvas &canvas);

} // namespace boltwright::ui
