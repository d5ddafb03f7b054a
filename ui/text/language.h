#pragma once

namespace boltwright::ui {

/// Lends core the reader's language: its phrases go through the application's translators (context "Core"), its numbers
/// are written as the default locale writes them. Once, when the program begins.
void lendCoreTheLanguage();

} // namespace boltwright::ui
