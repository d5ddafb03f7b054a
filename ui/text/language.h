#pragma once

namespace boltwright::ui {

/// Lends core the reader's language: its phrases go through the application's translators (context "Core"), its numbers
/// are written as the default locale writes them. Once, when the program begins.
void lendCoreTheLanguage();

/// Installs the translators for the reader's locale where there are any, then lends core the language. Looked for as
/// boltwright_de.qm and the like in the folder that BOLTWRIGHT_WORDS names, in boltwright/words beside what other
/// programs keep for the person or the machine (~/.local/share, /usr/share), and beside the program. Once, after the
/// application is made.
void takeTheReadersLanguage();

} // namespace boltwright::ui
