<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en">
    <context>
        <name />
        <message>
            <source> (read only)</source>
            <translation> (nur lesen)</translation>
        </message>
        <message>
            <source> BPM</source>
            <translation>S/min</translation>
        </message>
        <message>
            <source> Hz</source>
            <translation>Hz</translation>
        </message>
        <message>
            <source> LUFS</source>
            <translation> LUFS</translation>
        </message>
        <message>
            <source> bars</source>
            <translation>Takte</translation>
        </message>
        <message>
            <source> cents</source>
            <translation>Cent</translation>
        </message>
        <message>
            <source> h</source>
            <translation> h</translation>
        </message>
        <message>
            <source> min</source>
            <translation> min</translation>
        </message>
        <message>
            <source> or </source>
            <translation> oder </translation>
        </message>
        <message>
            <source> s</source>
            <translation> s</translation>
        </message>
        <message>
            <source> to {time}</source>
            <translation>bis {time}</translation>
        </message>
        <message>
            <source>'{name}' is not a note name.</source>
            <translation>„{name}“ ist kein Notenname.</translation>
        </message>
        <message>
            <source>, bars {bars}</source>
            <translation>, Takt {bars}</translation>
        </message>
        <message>
            <source>, done</source>
            <translation>, erledigt</translation>
        </message>
        <message>
            <source>, near {near_note}</source>
            <translation>, bei {near_note}</translation>
        </message>
        <message>
            <source>, not over yet</source>
            <translation>, noch nicht vorbei</translation>
        </message>
        <message>
            <source>, overdriven</source>
            <translation>, übersteuert</translation>
        </message>
        <message>
            <source>, the usual one</source>
            <translation>, der übliche</translation>
        </message>
        <message>
            <source>, this item {block_s}</source>
            <translation>, dieser Punkt {block_s}</translation>
        </message>
        <message>
            <source>, {dropped_frames} lost</source>
            <translation>, {dropped_frames} verloren</translation>
        </message>
        <message>
            <source>, {word} than before; it begins between the weeks of {low} and {high}</source>
            <translation>, {word} als davor; es beginnt zwischen den Wochen {low} und {high}</translation>
        </message>
        <message>
            <source>1 marker</source>
            <translation>1 Anmerkung</translation>
        </message>
        <message>
            <source>1, slight</source>
            <translation>1, leicht</translation>
        </message>
        <message>
            <source>1-24</source>
            <translation>1–24</translation>
        </message>
        <message>
            <source>1-24; empty: all of it</source>
            <translation>1–24; leer: alles</translation>
        </message>
        <message>
            <source>2, clear</source>
            <translation>2, deutlich</translation>
        </message>
        <message>
            <source>3, first to fix</source>
            <translation>3, zuerst angehen</translation>
        </message>
        <message>
            <source>; {alive} on Calendar</source>
            <translation>; {alive} im Kalender</translation>
        </message>
        <message>
            <source>&lt;p&gt;Tab walks through the controls; Space or Enter presses the one in focus. Letters and digits go to a text field while it is being written in.&lt;/p&gt;</source>
            <translation>&lt;p&gt;Tab führt durch die Bedienelemente; Leertaste oder Eingabetaste drückt das gewählte. Buchstaben und Ziffern gehen in ein Textfeld, solange darin geschrieben wird.&lt;/p&gt;</translation>
        </message>
        <message>
            <source>?</source>
            <translation>?</translation>
        </message>
        <message>
            <source>A CSV file with one row a day or a session. Days that have minutes in the journal keep them, so nothing is counted twice.</source>
            <translation>Eine CSV-Datei mit einer Zeile je Tag oder Sitzung. Tage, die im Journal Minuten haben, behalten sie; nichts wird doppelt gezählt.</translation>
        </message>
        <message>
            <source>A bundle from another computer, or a teacher's reply; or drop it here.</source>
            <translation>Ein Paket von einem anderen Rechner oder die Antwort einer Lehrkraft; oder hier ablegen.</translation>
        </message>
        <message>
            <source>A bundle opens beside your journal and changes nothing in it.</source>
            <translation>Ein Paket öffnet sich neben dem eigenen Journal und ändert darin nichts.</translation>
        </message>
        <message>
            <source>A bundle, as the teacher – Passagework</source>
            <translation>Ein Paket, als Lehrkraft – Passagework</translation>
        </message>
        <message>
            <source>A day needs both</source>
            <translation>Ein Tag braucht beides</translation>
        </message>
        <message>
            <source>A day needs the minutes and the takes</source>
            <translation>Ein Tag braucht die Minuten und die Aufnahmen</translation>
        </message>
        <message>
            <source>A fault in the program</source>
            <translation>Ein Fehler im Programm</translation>
        </message>
        <message>
            <source>A folder</source>
            <translation>Ein Ordner</translation>
        </message>
        <message>
            <source>A foot pedal that types keys works once its key stands here: step on it in the field. The usual keys go on working. Backspace takes a key away.</source>
            <translation>Ein Fußpedal, das Tasten tippt, wirkt, sobald seine Taste hier steht: im Feld darauf treten. Die üblichen Tasten gelten weiter. Die Rücktaste entfernt eine Taste.</translation>
        </message>
        <message>
            <source>A line of your own</source>
            <translation>Eine eigene Zeile</translation>
        </message>
        <message>
            <source>A new passage begins with</source>
            <translation>Eine neue Stelle beginnt mit</translation>
        </message>
        <message>
            <source>A new promise</source>
            <translation>Ein neuer Vorsatz</translation>
        </message>
        <message>
            <source>A new promise instead</source>
            <translation>Stattdessen ein neuer Vorsatz</translation>
        </message>
        <message>
            <source>A new rehearsal</source>
            <translation>Eine neue Probe</translation>
        </message>
        <message>
            <source>A passage is what you play again and again and want to compare.</source>
            <translation>Eine Stelle ist, was immer wieder gespielt und verglichen werden soll.</translation>
        </message>
        <message>
            <source>A passage needs a piece and a name.</source>
            <translation>Eine Stelle braucht ein Stück und einen Namen.</translation>
        </message>
        <message>
            <source>A planned rest day.</source>
            <translation>Ein geplanter Ruhetag.</translation>
        </message>
        <message>
            <source>A recording from {date}, {started:%H:%M}, {duration_s} long, was never filed. Its sound is safe.</source>
            <translation>Eine Aufnahme vom {date}, {started:%H:%M}, Dauer {duration_s}, wurde nie abgelegt. Ihr Klang ist sicher.</translation>
        </message>
        <message>
            <source>A recording runs.</source>
            <translation>Eine Aufnahme läuft.</translation>
        </message>
        <message>
            <source>A second take is possible, with the reason on record.</source>
            <translation>Eine zweite Aufnahme ist möglich; der Grund wird festgehalten.</translation>
        </message>
        <message>
            <source>A study, a concerto, a scale</source>
            <translation>Eine Etüde, ein Konzert, eine Tonleiter</translation>
        </message>
        <message>
            <source>A take is being recorded</source>
            <translation>Es wird aufgenommen</translation>
        </message>
        <message>
            <source>A take is being recorded.</source>
            <translation>Es wird gerade aufgenommen.</translation>
        </message>
        <message>
            <source>A take is measured from Listen, under Take, or all of them at the next start.</source>
            <translation>Eine Aufnahme lässt sich beim Anhören unter „Aufnahme“ messen; alle zusammen beim nächsten Start.</translation>
        </message>
        <message>
            <source>A week later</source>
            <translation>Eine Woche später</translation>
        </message>
        <message>
            <source>A year cannot be saved as '{name}'.</source>
            <translation>Ein Jahr lässt sich nicht als „{name}“ speichern.</translation>
        </message>
        <message>
            <source>A: {a}. B: {b}</source>
            <translation>A: {a}. B: {b}</translation>
        </message>
        <message>
            <source>Accents</source>
            <translation>Betonungen</translation>
        </message>
        <message>
            <source>Accept</source>
            <translation>Annehmen</translation>
        </message>
        <message>
            <source>Add</source>
            <translation>Hinzufügen</translation>
        </message>
        <message>
            <source>Add it to the list of items.</source>
            <translation>In der Liste der Punkte hinzufügen.</translation>
        </message>
        <message>
            <source>Add item</source>
            <translation>Punkt hinzufügen</translation>
        </message>
        <message>
            <source>Add one to the list.</source>
            <translation>In der Liste einen hinzufügen.</translation>
        </message>
        <message>
            <source>Add passage</source>
            <translation>Stelle hinzufügen</translation>
        </message>
        <message>
            <source>Add the category</source>
            <translation>Kategorie hinzufügen</translation>
        </message>
        <message>
            <source>Add the minutes</source>
            <translation>Die Minuten hinzufügen</translation>
        </message>
        <message>
            <source>Add what is set</source>
            <translation>Aufgabe hinzufügen</translation>
        </message>
        <message>
            <source>Aim</source>
            <translation>Ziel</translation>
        </message>
        <message>
            <source>Aim of the take</source>
            <translation>Ziel der Aufnahme</translation>
        </message>
        <message>
            <source>Aim of this take</source>
            <translation>Ziel dieser Aufnahme</translation>
        </message>
        <message>
            <source>Aim: met</source>
            <translation>Ziel: erreicht</translation>
        </message>
        <message>
            <source>Aim: not met</source>
            <translation>Ziel: nicht erreicht</translation>
        </message>
        <message>
            <source>Aim: partly met</source>
            <translation>Ziel: teilweise erreicht</translation>
        </message>
        <message>
            <source>Aim: {aim}</source>
            <translation>Ziel: {aim}</translation>
        </message>
        <message>
            <source>Aim: {lower}</source>
            <translation>Ziel: {lower}</translation>
        </message>
        <message>
            <source>All actions</source>
            <translation>Alle Befehle</translation>
        </message>
        <message>
            <source>All hours</source>
            <translation>Alle Stunden</translation>
        </message>
        <message>
            <source>All keys</source>
            <translation>Alle Tasten</translation>
        </message>
        <message>
            <source>All lanes, at their usual heights</source>
            <translation>Alle Spuren in üblicher Höhe</translation>
        </message>
        <message>
            <source>All lanes, usual heights</source>
            <translation>Alle Spuren, übliche Höhe</translation>
        </message>
        <message>
            <source>All measures</source>
            <translation>Alle Messgrößen</translation>
        </message>
        <message>
            <source>All takes of {days}</source>
            <translation>Alle Aufnahmen vom {days}</translation>
        </message>
        <message>
            <source>All the way down: the A is estimated from the take.</source>
            <translation>Ganz unten: Das A wird aus der Aufnahme geschätzt.</translation>
        </message>
        <message>
            <source>Already in the journal: {place}.</source>
            <translation>Schon im Journal: {place}.</translation>
        </message>
        <message>
            <source>An association at most: it cannot say that the minutes brought the change about.</source>
            <translation>Höchstens ein Zusammenhang: Er sagt nicht, dass die Minuten die Änderung bewirkt haben.</translation>
        </message>
        <message>
            <source>And write</source>
            <translation>Und schreiben</translation>
        </message>
        <message>
            <source>Another rule for '{name}'</source>
            <translation>Eine andere Regel für „{name}“</translation>
        </message>
        <message>
            <source>Answer the question beside each; then file them.</source>
            <translation>Die Frage daneben beantworten, dann ablegen.</translation>
        </message>
        <message>
            <source>Any practice counts unless minutes or takes are asked.</source>
            <translation>Jedes Üben zählt, außer wenn Minuten oder Aufnahmen verlangt sind.</translation>
        </message>
        <message>
            <source>Arpeggio</source>
            <translation>Arpeggio</translation>
        </message>
        <message>
            <source>As the system</source>
            <translation>Wie das System</translation>
        </message>
        <message>
            <source>Ask again</source>
            <translation>Neu fragen</translation>
        </message>
        <message>
            <source>At</source>
            <translation>Um</translation>
        </message>
        <message>
            <source>At least, a day</source>
            <translation>Mindestens, am Tag</translation>
        </message>
        <message>
            <source>At most</source>
            <translation>Höchstens</translation>
        </message>
        <message>
            <source>At most once a day while the program runs, and never once the day is done.</source>
            <translation>Höchstens einmal am Tag, solange das Programm läuft, und nie, wenn der Tag getan ist.</translation>
        </message>
        <message>
            <source>Audition rehearsal</source>
            <translation>Vorspielprobe</translation>
        </message>
        <message>
            <source>Audition rehearsal, or back to today</source>
            <translation>Vorspielprobe, oder zurück zu heute</translation>
        </message>
        <message>
            <source>Author</source>
            <translation>Von wem</translation>
        </message>
        <message>
            <source>Back</source>
            <translation>Zurück</translation>
        </message>
        <message>
            <source>Back 2 s</source>
            <translation>2 s zurück</translation>
        </message>
        <message>
            <source>Back to the lanes</source>
            <translation>Zurück zu den Spuren</translation>
        </message>
        <message>
            <source>Back to the year</source>
            <translation>Zurück zum Jahr</translation>
        </message>
        <message>
            <source>Back to today</source>
            <translation>Zurück zu heute</translation>
        </message>
        <message>
            <source>Backups</source>
            <translation>Sicherungen</translation>
        </message>
        <message>
            <source>Backups of this journal</source>
            <translation>Sicherungen dieses Journals</translation>
        </message>
        <message>
            <source>Backups, the newest first</source>
            <translation>Sicherungen, die neueste zuerst</translation>
        </message>
        <message>
            <source>Bars</source>
            <translation>Takte</translation>
        </message>
        <message>
            <source>Bars of it that are played</source>
            <translation>Takte daraus, die gespielt werden</translation>
        </message>
        <message>
            <source>Bars of the score</source>
            <translation>Takte der Noten</translation>
        </message>
        <message>
            <source>Beat, per minute</source>
            <translation>Schläge pro Minute</translation>
        </message>
        <message>
            <source>Beats a bar</source>
            <translation>Schläge pro Takt</translation>
        </message>
        <message>
            <source>Before and after</source>
            <translation>Vorher und nachher</translation>
        </message>
        <message>
            <source>Begin the rehearsal</source>
            <translation>Die Probe beginnen</translation>
        </message>
        <message>
            <source>Begin with a passage: a few bars you want to hear getting better. Then record it, or drop recordings anywhere on this window. The guide (Shift+F1) leads through the first day.</source>
            <translation>Mit einer Stelle beginnen: ein paar Takte, die besser werden sollen. Dann aufnehmen oder Aufnahmen irgendwo auf dieses Fenster ziehen. Das Handbuch (Shift+F1) führt durch den ersten Tag.</translation>
        </message>
        <message>
            <source>Better in tune</source>
            <translation>Sauberer</translation>
        </message>
        <message>
            <source>Blind ear</source>
            <translation>Blind</translation>
        </message>
        <message>
            <source>Blind ear: hear the first</source>
            <translation>Blindvergleich: die erste hören</translation>
        </message>
        <message>
            <source>Blind ear: hear the second</source>
            <translation>Blindvergleich: die zweite hören</translation>
        </message>
        <message>
            <source>Blind ear: no difference</source>
            <translation>Blindvergleich: kein Unterschied</translation>
        </message>
        <message>
            <source>Blind ear: the first</source>
            <translation>Blindvergleich: die erste</translation>
        </message>
        <message>
            <source>Blind ear: the second</source>
            <translation>Blindvergleich: die zweite</translation>
        </message>
        <message>
            <source>Blind ear: two takes without their dates, or back</source>
            <translation>Blindvergleich: zwei Aufnahmen ohne Datum, oder zurück</translation>
        </message>
        <message>
            <source>Both: {target}</source>
            <translation>Beide: {target}</translation>
        </message>
        <message>
            <source>Bounds</source>
            <translation>Grenzen</translation>
        </message>
        <message>
            <source>Bring back</source>
            <translation>Zurückholen</translation>
        </message>
        <message>
            <source>Bring back what was put aside for this passage</source>
            <translation>Zurückholen, was für diese Stelle beiseitegelegt wurde</translation>
        </message>
        <message>
            <source>Bring minutes in from a table (CSV), or back to the year</source>
            <translation>Minuten aus einer Tabelle (CSV) holen, oder zurück zum Jahr</translation>
        </message>
        <message>
            <source>Broken thirds</source>
            <translation>Gebrochene Terzen</translation>
        </message>
        <message>
            <source>Bundles</source>
            <translation>Pakete</translation>
        </message>
        <message>
            <source>Bundles (*.pwbundle)</source>
            <translation>Pakete (*.pwbundle)</translation>
        </message>
        <message>
            <source>Bundles and replies (*.pwbundle *.pwreply)</source>
            <translation>Pakete und Antworten (*.pwbundle *.pwreply)</translation>
        </message>
        <message>
            <source>Busier and quieter times</source>
            <translation>Vollere und ruhigere Zeiten</translation>
        </message>
        <message>
            <source>Calendar</source>
            <translation>Kalender</translation>
        </message>
        <message>
            <source>Calendar (iCalendar)</source>
            <translation>Kalender (iCalendar)</translation>
        </message>
        <message>
            <source>Cancel</source>
            <translation>Abbrechen</translation>
        </message>
        <message>
            <source>Cancel the long work that is running</source>
            <translation>Die laufende lange Arbeit abbrechen</translation>
        </message>
        <message>
            <source>Carry the chosen work on by a week</source>
            <translation>Die gewählte Aufgabe um eine Woche verschieben</translation>
        </message>
        <message>
            <source>Carrying markers over</source>
            <translation>Anmerkungen übertragen</translation>
        </message>
        <message>
            <source>Categories</source>
            <translation>Kategorien</translation>
        </message>
        <message>
            <source>Categories of earlier markers</source>
            <translation>Kategorien früherer Anmerkungen</translation>
        </message>
        <message>
            <source>Category</source>
            <translation>Kategorie</translation>
        </message>
        <message>
            <source>Cents</source>
            <translation>Cent</translation>
        </message>
        <message>
            <source>Cents; plus-minus holds the truth in 95 of 100 cases.</source>
            <translation>Cent; in 95 von 100 Fällen liegt der wahre Wert innerhalb des Plus-Minus.</translation>
        </message>
        <message>
            <source>Change</source>
            <translation>Änderung</translation>
        </message>
        <message>
            <source>Change between light and dark</source>
            <translation>Zwischen hell und dunkel wechseln</translation>
        </message>
        <message>
            <source>Change from that day on</source>
            <translation>Ab diesem Tag ändern</translation>
        </message>
        <message>
            <source>Change the chosen passage</source>
            <translation>Die gewählte Stelle ändern</translation>
        </message>
        <message>
            <source>Change the chosen remark</source>
            <translation>Die gewählte Bemerkung ändern</translation>
        </message>
        <message>
            <source>Change the list of items</source>
            <translation>Die Liste der Punkte ändern</translation>
        </message>
        <message>
            <source>Change the marker categories</source>
            <translation>Die Kategorien der Anmerkungen ändern</translation>
        </message>
        <message>
            <source>Change the passage</source>
            <translation>Die Stelle ändern</translation>
        </message>
        <message>
            <source>Change the passage's own name.</source>
            <translation>Den Namen der Stelle selbst ändern.</translation>
        </message>
        <message>
            <source>Change the rule</source>
            <translation>Die Regel ändern</translation>
        </message>
        <message>
            <source>Changes from A to B</source>
            <translation>Änderungen von A zu B</translation>
        </message>
        <message>
            <source>Changes over days</source>
            <translation>Änderungen über Tage</translation>
        </message>
        <message>
            <source>Channel of the input</source>
            <translation>Kanal des Eingangs</translation>
        </message>
        <message>
            <source>Channel {number}</source>
            <translation>Kanal {number}</translation>
        </message>
        <message>
            <source>Check the input level, or stop checking</source>
            <translation>Den Eingangspegel prüfen oder die Prüfung beenden</translation>
        </message>
        <message>
            <source>Choose</source>
            <translation>Wählen</translation>
        </message>
        <message>
            <source>Choose a file</source>
            <translation>Eine Datei wählen</translation>
        </message>
        <message>
            <source>Choose a file, or 'No score'.</source>
            <translation>Eine Datei wählen oder „Keine Noten“.</translation>
        </message>
        <message>
            <source>Choose a line to read what it means.</source>
            <translation>Eine Zeile wählen, um zu lesen, was sie bedeutet.</translation>
        </message>
        <message>
            <source>Choose a line with a passage.</source>
            <translation>Eine Zeile mit einer Stelle wählen.</translation>
        </message>
        <message>
            <source>Choose a score</source>
            <translation>Noten wählen</translation>
        </message>
        <message>
            <source>Choose another folder.</source>
            <translation>Einen anderen Ordner wählen.</translation>
        </message>
        <message>
            <source>Choose one in the list first.</source>
            <translation>Zuerst in der Liste wählen.</translation>
        </message>
        <message>
            <source>Choose one in the list.</source>
            <translation>In der Liste einen wählen.</translation>
        </message>
        <message>
            <source>Choose the folder and write</source>
            <translation>Den Ordner wählen und schreiben</translation>
        </message>
        <message>
            <source>Choose the next lane</source>
            <translation>Die nächste Spur wählen</translation>
        </message>
        <message>
            <source>Choose the watched folder</source>
            <translation>Den überwachten Ordner wählen</translation>
        </message>
        <message>
            <source>Chromatic</source>
            <translation>Chromatisch</translation>
        </message>
        <message>
            <source>Click</source>
            <translation>Klick</translation>
        </message>
        <message>
            <source>Click and drone</source>
            <translation>Klick und Bordun</translation>
        </message>
        <message>
            <source>Click and drone for the next takes</source>
            <translation>Klick und Bordun für die nächsten Aufnahmen</translation>
        </message>
        <message>
            <source>Click while listening, or none</source>
            <translation>Klick beim Anhören, oder keiner</translation>
        </message>
        <message>
            <source>Click: {which}.</source>
            <translation>Klick: {which}.</translation>
        </message>
        <message>
            <source>Clips (*{ending})</source>
            <translation>Clips (*{ending})</translation>
        </message>
        <message>
            <source>Clips that were made to be shared</source>
            <translation>Clips, die zum Teilen gemacht wurden</translation>
        </message>
        <message>
            <source>Clips you made, the newest first. The program itself sends nothing.</source>
            <translation>Gemachte Clips, die neuesten zuerst. Das Programm selbst sendet nichts.</translation>
        </message>
        <message>
            <source>Clock not running</source>
            <translation>Uhr läuft nicht</translation>
        </message>
        <message>
            <source>Clock on item 1 of the list</source>
            <translation>Uhr auf Punkt 1 der Liste</translation>
        </message>
        <message>
            <source>Clock on item 2 of the list</source>
            <translation>Uhr auf Punkt 2 der Liste</translation>
        </message>
        <message>
            <source>Clock on item 3 of the list</source>
            <translation>Uhr auf Punkt 3 der Liste</translation>
        </message>
        <message>
            <source>Clock on item 4 of the list</source>
            <translation>Uhr auf Punkt 4 der Liste</translation>
        </message>
        <message>
            <source>Clock on item 5 of the list</source>
            <translation>Uhr auf Punkt 5 der Liste</translation>
        </message>
        <message>
            <source>Clock on item 6 of the list</source>
            <translation>Uhr auf Punkt 6 der Liste</translation>
        </message>
        <message>
            <source>Clock on item 7 of the list</source>
            <translation>Uhr auf Punkt 7 der Liste</translation>
        </message>
        <message>
            <source>Clock on item 8 of the list</source>
            <translation>Uhr auf Punkt 8 der Liste</translation>
        </message>
        <message>
            <source>Clock on item 9 of the list</source>
            <translation>Uhr auf Punkt 9 der Liste</translation>
        </message>
        <message>
            <source>Clock on the chosen line</source>
            <translation>Uhr auf die gewählte Zeile</translation>
        </message>
        <message>
            <source>Close</source>
            <translation>Schließen</translation>
        </message>
        <message>
            <source>Close the program</source>
            <translation>Das Programm schließen</translation>
        </message>
        <message>
            <source>Colours</source>
            <translation>Farben</translation>
        </message>
        <message>
            <source>Column of the days</source>
            <translation>Spalte der Tage</translation>
        </message>
        <message>
            <source>Column of the practice</source>
            <translation>Spalte des Übens</translation>
        </message>
        <message>
            <source>Coming dates</source>
            <translation>Kommende Termine</translation>
        </message>
        <message>
            <source>Compare</source>
            <translation>Vergleichen</translation>
        </message>
        <message>
            <source>Compare this take with the first of its passage</source>
            <translation>Diese Aufnahme mit der ersten ihrer Stelle vergleichen</translation>
        </message>
        <message>
            <source>Comparing</source>
            <translation>Vergleich läuft</translation>
        </message>
        <message>
            <source>Copied</source>
            <translation>Kopiert</translation>
        </message>
        <message>
            <source>Copied: {text}. This number stays as it is.</source>
            <translation>Kopiert: {text}. Diese Zahl bleibt, wie sie ist.</translation>
        </message>
        <message>
            <source>Copies day and days kept. A number that was shared once stays as it is.</source>
            <translation>Kopiert Tag und gehaltene Tage. Eine einmal geteilte Zahl bleibt, wie sie ist.</translation>
        </message>
        <message>
            <source>Copies for other programs; the journal stays as it is.</source>
            <translation>Kopien für andere Programme; das Journal bleibt, wie es ist.</translation>
        </message>
        <message>
            <source>Copy</source>
            <translation>Kopieren</translation>
        </message>
        <message>
            <source>Copy details</source>
            <translation>Einzelheiten kopieren</translation>
        </message>
        <message>
            <source>Copy the text</source>
            <translation>Den Text kopieren</translation>
        </message>
        <message>
            <source>Count the minutes in which the instrument sounds, or stop</source>
            <translation>Die klingenden Minuten zählen, oder damit aufhören</translation>
        </message>
        <message>
            <source>Count-in</source>
            <translation>Vorzählen</translation>
        </message>
        <message>
            <source>Counted</source>
            <translation>Gezählt</translation>
        </message>
        <message>
            <source>Dark</source>
            <translation>Dunkel</translation>
        </message>
        <message>
            <source>Day</source>
            <translation>Tag</translation>
        </message>
        <message>
            <source>Day by day</source>
            <translation>Tag für Tag</translation>
        </message>
        <message>
            <source>Day number</source>
            <translation>Tag Nummer</translation>
        </message>
        <message>
            <source>Day number of</source>
            <translation>Tagesnummer von</translation>
        </message>
        <message>
            <source>Day of it</source>
            <translation>Ihr Tag</translation>
        </message>
        <message>
            <source>Day of the lesson</source>
            <translation>Tag der Stunde</translation>
        </message>
        <message>
            <source>Day since start</source>
            <translation>Tag seit Beginn</translation>
        </message>
        <message>
            <source>Days</source>
            <translation>Tage</translation>
        </message>
        <message>
            <source>Days are written as</source>
            <translation>Tage sind geschrieben als</translation>
        </message>
        <message>
            <source>Days in a row</source>
            <translation>Tage in Folge</translation>
        </message>
        <message>
            <source>Days in total</source>
            <translation>Tage insgesamt</translation>
        </message>
        <message>
            <source>Days kept</source>
            <translation>Gehaltene Tage</translation>
        </message>
        <message>
            <source>Days to keep</source>
            <translation>Zu haltende Tage</translation>
        </message>
        <message>
            <source>Delay beyond what the devices say: {delay} ms ± {scatter} ms, measured {day}.</source>
            <translation>Verzögerung über die Angaben der Geräte hinaus: {delay} ms ± {scatter} ms, gemessen {day}.</translation>
        </message>
        <message>
            <source>Delete</source>
            <translation>Löschen</translation>
        </message>
        <message>
            <source>Delete the chosen marker</source>
            <translation>Die gewählte Anmerkung löschen</translation>
        </message>
        <message>
            <source>Delete this take</source>
            <translation>Diese Aufnahme löschen</translation>
        </message>
        <message>
            <source>Details</source>
            <translation>Einzelheiten</translation>
        </message>
        <message>
            <source>Deviation</source>
            <translation>Abweichung</translation>
        </message>
        <message>
            <source>Deviation and sound, moving (MP4)</source>
            <translation>Abweichung und Klang, bewegt (MP4)</translation>
        </message>
        <message>
            <source>Deviation, cents</source>
            <translation>Abweichung, Cent</translation>
        </message>
        <message>
            <source>Deviation, cents: ring take A, dot take B</source>
            <translation>Abweichung, Cent: Ring Aufnahme A, Punkt Aufnahme B</translation>
        </message>
        <message>
            <source>Deviation, cents: sharp above (slanted), flat below (level), hollow where uncertain</source>
            <translation>Abweichung, Cent: zu hoch oben (schräg), zu tief unten (waagerecht), hohl, wo unsicher</translation>
        </message>
        <message>
            <source>Diminished seventh</source>
            <translation>Verminderter Septakkord</translation>
        </message>
        <message>
            <source>Do not wait</source>
            <translation>Nicht warten</translation>
        </message>
        <message>
            <source>Documents (*.pdf)</source>
            <translation>Dokumente (*.pdf)</translation>
        </message>
        <message>
            <source>Dominant seventh</source>
            <translation>Dominantseptakkord</translation>
        </message>
        <message>
            <source>Done</source>
            <translation>Fertig</translation>
        </message>
        <message>
            <source>Done again</source>
            <translation>Wiederholt</translation>
        </message>
        <message>
            <source>Done so far</source>
            <translation>Bisher getan</translation>
        </message>
        <message>
            <source>Dotted</source>
            <translation>Punktiert</translation>
        </message>
        <message>
            <source>Down</source>
            <translation>Ab</translation>
        </message>
        <message>
            <source>Draw the order by lot</source>
            <translation>Die Reihenfolge auslosen</translation>
        </message>
        <message>
            <source>Drawing two takes...</source>
            <translation>Zwei Aufnahmen werden gezeichnet …</translation>
        </message>
        <message>
            <source>Drone</source>
            <translation>Bordun</translation>
        </message>
        <message>
            <source>Drone while listening, or none</source>
            <translation>Bordun beim Anhören, oder keiner</translation>
        </message>
        <message>
            <source>Drone: {notes}.</source>
            <translation>Bordun: {notes}.</translation>
        </message>
        <message>
            <source>Drop the break</source>
            <translation>Die Unterbrechung streichen</translation>
        </message>
        <message>
            <source>Drop the next planned break</source>
            <translation>Die nächste geplante Unterbrechung streichen</translation>
        </message>
        <message>
            <source>Due on</source>
            <translation>Fällig am</translation>
        </message>
        <message>
            <source>Dynamics: {dynamics}</source>
            <translation>Dynamik: {dynamics}</translation>
        </message>
        <message>
            <source>Each passage is played once, straight through, as at an audition. A chance is used up whatever came of it; only what the device spoils is given back. You listen afterwards.</source>
            <translation>Jede Stelle wird einmal durchgespielt, wie beim Probespiel. Eine Chance ist vergeben, wie sie auch ausgeht; nur was das Gerät verdirbt, wird zurückgegeben. Angehört wird danach.</translation>
        </message>
        <message>
            <source>Each take is laid against the score or the latest take. This takes a moment.</source>
            <translation>Jede Aufnahme wird an die Noten oder an die neueste gelegt. Das dauert einen Moment.</translation>
        </message>
        <message>
            <source>Ear and measurement</source>
            <translation>Ohr und Messung</translation>
        </message>
        <message>
            <source>Earlier</source>
            <translation>Früher</translation>
        </message>
        <message>
            <source>End it in png, svg, pdf or csv.</source>
            <translation>Mit png, svg, pdf oder csv enden lassen.</translation>
        </message>
        <message>
            <source>End of the part kept of {name}</source>
            <translation>Ende des behaltenen Teils von {name}</translation>
        </message>
        <message>
            <source>End the rehearsal</source>
            <translation>Die Probe beenden</translation>
        </message>
        <message>
            <source>End today</source>
            <translation>Heute beenden</translation>
        </message>
        <message>
            <source>Equal</source>
            <translation>Gleichstufig</translation>
        </message>
        <message>
            <source>Even</source>
            <translation>Gleichmäßig</translation>
        </message>
        <message>
            <source>Everything in the journal</source>
            <translation>Alles im Journal</translation>
        </message>
        <message>
            <source>Everything, for a second computer</source>
            <translation>Alles, für einen zweiten Rechner</translation>
        </message>
        <message>
            <source>Everywhere</source>
            <translation>Überall</translation>
        </message>
        <message>
            <source>Fade in and out</source>
            <translation>Ein- und ausblenden</translation>
        </message>
        <message>
            <source>Faster</source>
            <translation>Schneller</translation>
        </message>
        <message>
            <source>Figure</source>
            <translation>Figur</translation>
        </message>
        <message>
            <source>File</source>
            <translation>Datei</translation>
        </message>
        <message>
            <source>File it</source>
            <translation>Ablegen</translation>
        </message>
        <message>
            <source>File it there</source>
            <translation>Dort ablegen</translation>
        </message>
        <message>
            <source>File the first new clip as proposed</source>
            <translation>Den ersten neuen Clip wie vorgeschlagen ablegen</translation>
        </message>
        <message>
            <source>File them</source>
            <translation>Ablegen</translation>
        </message>
        <message>
            <source>File {good}</source>
            <translation>{good} ablegen</translation>
        </message>
        <message>
            <source>Filed under</source>
            <translation>Abgelegt unter</translation>
        </message>
        <message>
            <source>Filed: {passage_name}, {practice_day}, take {number}.</source>
            <translation>Abgelegt: {passage_name}, {practice_day}, Aufnahme {number}.</translation>
        </message>
        <message>
            <source>Filed; the recording itself was not touched.</source>
            <translation>Abgelegt; die Aufnahme selbst blieb unberührt.</translation>
        </message>
        <message>
            <source>Filing the take</source>
            <translation>Die Aufnahme wird abgelegt</translation>
        </message>
        <message>
            <source>Filing {chosen}</source>
            <translation>Abgelegt wird: {chosen}</translation>
        </message>
        <message>
            <source>Filter</source>
            <translation>Filter</translation>
        </message>
        <message>
            <source>Filter the markers, or show all of them</source>
            <translation>Die Anmerkungen filtern, oder alle zeigen</translation>
        </message>
        <message>
            <source>Find every run through the passage in B</source>
            <translation>Jeden Durchgang durch die Stelle in B finden</translation>
        </message>
        <message>
            <source>Find in the guide</source>
            <translation>Im Handbuch suchen</translation>
        </message>
        <message>
            <source>Find in the guide, then Enter</source>
            <translation>Im Handbuch suchen, dann Eingabetaste</translation>
        </message>
        <message>
            <source>Find the runs in B</source>
            <translation>Durchgänge in B finden</translation>
        </message>
        <message>
            <source>Finding runs through the passage</source>
            <translation>Durchgänge durch die Stelle werden gesucht</translation>
        </message>
        <message>
            <source>First and latest</source>
            <translation>Erste und neueste</translation>
        </message>
        <message>
            <source>First by ear: mark what you hear. The measurements come afterwards.</source>
            <translation>Zuerst nach dem Ohr: anmerken, was zu hören ist. Die Messungen kommen danach.</translation>
        </message>
        <message>
            <source>First day</source>
            <translation>Erster Tag</translation>
        </message>
        <message>
            <source>First days against the latest, or week over week</source>
            <translation>Erste Tage gegen die neuesten, oder Woche für Woche</translation>
        </message>
        <message>
            <source>First note</source>
            <translation>Erste Note</translation>
        </message>
        <message>
            <source>First page, development, bars with the shift</source>
            <translation>Erste Seite, Durchführung, Takte mit dem Lagenwechsel</translation>
        </message>
        <message>
            <source>First rows of the file</source>
            <translation>Erste Zeilen der Datei</translation>
        </message>
        <message>
            <source>Folder for the clips</source>
            <translation>Ordner für die Clips</translation>
        </message>
        <message>
            <source>Folder for the files</source>
            <translation>Ordner für die Dateien</translation>
        </message>
        <message>
            <source>For paper</source>
            <translation>Für Papier</translation>
        </message>
        <message>
            <source>Form</source>
            <translation>Form</translation>
        </message>
        <message>
            <source>Format</source>
            <translation>Format</translation>
        </message>
        <message>
            <source>Forty days of scales</source>
            <translation>Vierzig Tage Tonleitern</translation>
        </message>
        <message>
            <source>Forward 2 s</source>
            <translation>2 s vor</translation>
        </message>
        <message>
            <source>Fri</source>
            <translation>Fr</translation>
        </message>
        <message>
            <source>From</source>
            <translation>Von</translation>
        </message>
        <message>
            <source>From a file</source>
            <translation>Aus einer Datei</translation>
        </message>
        <message>
            <source>From memory, hands apart, at 72</source>
            <translation>Auswendig, Hände einzeln, bei 72</translation>
        </message>
        <message>
            <source>Give short days a name of your own: a bar up to these minutes is hatched, and its name stands in the legend and in what is saved. A short day counts as any other; only a promise can ask for more.</source>
            <translation>Kurzen Tagen einen eigenen Namen geben: Ein Balken bis zu diesen Minuten ist schraffiert, und der Name steht in der Legende und im Gespeicherten. Ein kurzer Tag zählt wie jeder andere; nur ein Vorsatz kann mehr verlangen.</translation>
        </message>
        <message>
            <source>Give these days</source>
            <translation>Diese Tage weitergeben</translation>
        </message>
        <message>
            <source>Go back to this one</source>
            <translation>Zu dieser zurückgehen</translation>
        </message>
        <message>
            <source>Go on</source>
            <translation>Weiter</translation>
        </message>
        <message>
            <source>Go on without it</source>
            <translation>Ohne weiter</translation>
        </message>
        <message>
            <source>Go on without this passage</source>
            <translation>Ohne diese Stelle weiter</translation>
        </message>
        <message>
            <source>Go to Calendar</source>
            <translation>Zum Kalender</translation>
        </message>
        <message>
            <source>Go to Compare</source>
            <translation>Zum Vergleichen</translation>
        </message>
        <message>
            <source>Go to Lesson</source>
            <translation>Zur Stunde</translation>
        </message>
        <message>
            <source>Go to Listen</source>
            <translation>Zum Anhören</translation>
        </message>
        <message>
            <source>Go to Practice</source>
            <translation>Zum Üben</translation>
        </message>
        <message>
            <source>Goal in words</source>
            <translation>Ziel in Worten</translation>
        </message>
        <message>
            <source>Guide</source>
            <translation>Handbuch</translation>
        </message>
        <message>
            <source>Harmonic minor</source>
            <translation>Harmonisch Moll</translation>
        </message>
        <message>
            <source>Harmonics</source>
            <translation>Flageoletts</translation>
        </message>
        <message>
            <source>Hear</source>
            <translation>Hören</translation>
        </message>
        <message>
            <source>Hear A</source>
            <translation>A hören</translation>
        </message>
        <message>
            <source>Hear B</source>
            <translation>B hören</translation>
        </message>
        <message>
            <source>Hear it</source>
            <translation>Anhören</translation>
        </message>
        <message>
            <source>Hear the earliest take of the passage, then the latest</source>
            <translation>Die früheste Aufnahme der Stelle hören, dann die neueste</translation>
        </message>
        <message>
            <source>Hear the first</source>
            <translation>Die erste hören</translation>
        </message>
        <message>
            <source>Hear the next take of the rehearsal</source>
            <translation>Die nächste Aufnahme der Probe hören</translation>
        </message>
        <message>
            <source>Hear the second</source>
            <translation>Die zweite hören</translation>
        </message>
        <message>
            <source>Hear them in order</source>
            <translation>Der Reihe nach hören</translation>
        </message>
        <message>
            <source>Hear then and now</source>
            <translation>Damals und jetzt hören</translation>
        </message>
        <message>
            <source>Hear this week a year ago, then now</source>
            <translation>Diese Woche vor einem Jahr hören, dann jetzt</translation>
        </message>
        <message>
            <source>Hear {where}</source>
            <translation>{where} hören</translation>
        </message>
        <message>
            <source>Heard</source>
            <translation>Gehört</translation>
        </message>
        <message>
            <source>Hide the chosen lane</source>
            <translation>Die gewählte Spur ausblenden</translation>
        </message>
        <message>
            <source>Hours before the journal</source>
            <translation>Stunden vor dem Journal</translation>
        </message>
        <message>
            <source>How it is measured</source>
            <translation>Wie gemessen wird</translation>
        </message>
        <message>
            <source>How the days are counted</source>
            <translation>Wie die Tage gezählt werden</translation>
        </message>
        <message>
            <source>Import</source>
            <translation>Import</translation>
        </message>
        <message>
            <source>Import a folder of recordings</source>
            <translation>Einen Ordner mit Aufnahmen importieren</translation>
        </message>
        <message>
            <source>Import recordings</source>
            <translation>Aufnahmen importieren</translation>
        </message>
        <message>
            <source>In</source>
            <translation>In</translation>
        </message>
        <message>
            <source>In B at</source>
            <translation>In B bei</translation>
        </message>
        <message>
            <source>In short</source>
            <translation>Kurz gesagt</translation>
        </message>
        <message>
            <source>In the file</source>
            <translation>In der Datei</translation>
        </message>
        <message>
            <source>Input</source>
            <translation>Eingang</translation>
        </message>
        <message>
            <source>Input closed</source>
            <translation>Eingang geschlossen</translation>
        </message>
        <message>
            <source>Input level</source>
            <translation>Eingangspegel</translation>
        </message>
        <message>
            <source>Inside the bounds</source>
            <translation>Innerhalb der Grenzen</translation>
        </message>
        <message>
            <source>Instrument</source>
            <translation>Instrument</translation>
        </message>
        <message>
            <source>Intonation</source>
            <translation>Intonation</translation>
        </message>
        <message>
            <source>Intonation: {intonation}</source>
            <translation>Intonation: {intonation}</translation>
        </message>
        <message>
            <source>It can be heard once every passage has had its chance.</source>
            <translation>Anzuhören, sobald jede Stelle ihre Chance hatte.</translation>
        </message>
        <message>
            <source>It sounds now</source>
            <translation>Es klingt jetzt</translation>
        </message>
        <message>
            <source>Item</source>
            <translation>Punkt</translation>
        </message>
        <message>
            <source>Items</source>
            <translation>Punkte</translation>
        </message>
        <message>
            <source>Items and their minutes today</source>
            <translation>Punkte und ihre Minuten heute</translation>
        </message>
        <message>
            <source>Items put away</source>
            <translation>Weggelegte Punkte</translation>
        </message>
        <message>
            <source>Items to practise</source>
            <translation>Punkte zum Üben</translation>
        </message>
        <message>
            <source>Judging the days</source>
            <translation>Die Tage werden beurteilt</translation>
        </message>
        <message>
            <source>Just</source>
            <translation>Rein</translation>
        </message>
        <message>
            <source>Just now the first was {first}, the second {second}.</source>
            <translation>Zuletzt war die erste {first}, die zweite {second}.</translation>
        </message>
        <message>
            <source>Keep</source>
            <translation>Behalten</translation>
        </message>
        <message>
            <source>Keep the bounds of the passage</source>
            <translation>Die Grenzen der Stelle behalten</translation>
        </message>
        <message>
            <source>Keep the hours</source>
            <translation>Die Stunden behalten</translation>
        </message>
        <message>
            <source>Keep the names</source>
            <translation>Die Namen behalten</translation>
        </message>
        <message>
            <source>Keep the reason</source>
            <translation>Den Grund festhalten</translation>
        </message>
        <message>
            <source>Keep them</source>
            <translation>Behalten</translation>
        </message>
        <message>
            <source>Keep these bounds</source>
            <translation>Diese Grenzen behalten</translation>
        </message>
        <message>
            <source>Keep these minutes</source>
            <translation>Diese Minuten behalten</translation>
        </message>
        <message>
            <source>Kept with the days shown here; tasks enter the plan of each day.</source>
            <translation>Bleibt bei den hier gezeigten Tagen; Aufgaben kommen in den Plan jedes Tages.</translation>
        </message>
        <message>
            <source>Key</source>
            <translation>Taste</translation>
        </message>
        <message>
            <source>Keys</source>
            <translation>Tasten</translation>
        </message>
        <message>
            <source>Keys of your own</source>
            <translation>Eigene Tasten</translation>
        </message>
        <message>
            <source>Keys of your own, for a pedal</source>
            <translation>Eigene Tasten, für ein Pedal</translation>
        </message>
        <message>
            <source>Keys while it plays, held for a span:   {keys}</source>
            <translation>Tasten beim Abspielen, gehalten für eine Spanne:   {keys}</translation>
        </message>
        <message>
            <source>Keys: {first}, {second} to hear, space to pause; {one}, {none}, {other} to answer</source>
            <translation>Tasten: {first}, {second} zum Hören, Leertaste für Pause; {one}, {none}, {other} zum Antworten</translation>
        </message>
        <message>
            <source>Kind</source>
            <translation>Art</translation>
        </message>
        <message>
            <source>Kind of date</source>
            <translation>Art des Termins</translation>
        </message>
        <message>
            <source>Kind {number} up to, minutes</source>
            <translation>Art {number} bis, Minuten</translation>
        </message>
        <message>
            <source>Kinds of day</source>
            <translation>Tagarten</translation>
        </message>
        <message>
            <source>Lanes</source>
            <translation>Spuren</translation>
        </message>
        <message>
            <source>Lanes of both takes</source>
            <translation>Spuren beider Aufnahmen</translation>
        </message>
        <message>
            <source>Lanes of the take: sound, deviation, tempo, loudness</source>
            <translation>Spuren der Aufnahme: Klang, Abweichung, Tempo, Lautheit</translation>
        </message>
        <message>
            <source>Language</source>
            <translation>Sprache</translation>
        </message>
        <message>
            <source>Large</source>
            <translation>Groß</translation>
        </message>
        <message>
            <source>Large view for the music stand, or back</source>
            <translation>Große Ansicht für das Notenpult, oder zurück</translation>
        </message>
        <message>
            <source>Last day</source>
            <translation>Letzter Tag</translation>
        </message>
        <message>
            <source>Last seven days</source>
            <translation>Letzte sieben Tage</translation>
        </message>
        <message>
            <source>Later</source>
            <translation>Später</translation>
        </message>
        <message>
            <source>Laying the takes note against note</source>
            <translation>Die Aufnahmen werden Note für Note aneinandergelegt</translation>
        </message>
        <message>
            <source>Leave it</source>
            <translation>Lassen</translation>
        </message>
        <message>
            <source>Leave out</source>
            <translation>Auslassen</translation>
        </message>
        <message>
            <source>Leave the bundle and open your own journal</source>
            <translation>Das Paket verlassen und das eigene Journal öffnen</translation>
        </message>
        <message>
            <source>Leave the line out</source>
            <translation>Die Zeile auslassen</translation>
        </message>
        <message>
            <source>Leave them</source>
            <translation>Weglassen</translation>
        </message>
        <message>
            <source>Left and right read the bars.</source>
            <translation>Links und rechts lesen die Balken vor.</translation>
        </message>
        <message>
            <source>Length</source>
            <translation>Dauer</translation>
        </message>
        <message>
            <source>Lesson</source>
            <translation>Stunde</translation>
        </message>
        <message>
            <source>Level</source>
            <translation>Pegel</translation>
        </message>
        <message>
            <source>Light</source>
            <translation>Hell</translation>
        </message>
        <message>
            <source>Listen</source>
            <translation>Anhören</translation>
        </message>
        <message>
            <source>Listen along</source>
            <translation>Mithören</translation>
        </message>
        <message>
            <source>Listen first</source>
            <translation>Zuerst hören</translation>
        </message>
        <message>
            <source>Listen first, without measurements, or no longer</source>
            <translation>Zuerst hören, ohne Messungen, oder nicht mehr</translation>
        </message>
        <message>
            <source>Listen first; the numbers can wait.</source>
            <translation>Zuerst hören; die Zahlen können warten.</translation>
        </message>
        <message>
            <source>Listen to the latest take of today</source>
            <translation>Die neueste Aufnahme von heute anhören</translation>
        </message>
        <message>
            <source>Listening to the input</source>
            <translation>Der Eingang wird abgehört</translation>
        </message>
        <message>
            <source>Longer where the sound breaks up on a busy machine; it then follows a key later.</source>
            <translation>Länger, wo der Klang auf einem beschäftigten Rechner abreißt; er folgt einer Taste dann später.</translation>
        </message>
        <message>
            <source>Look again</source>
            <translation>Neu suchen</translation>
        </message>
        <message>
            <source>Look at all</source>
            <translation>Alle ansehen</translation>
        </message>
        <message>
            <source>Look at all new clips</source>
            <translation>Alle neuen Clips ansehen</translation>
        </message>
        <message>
            <source>Look further to the left</source>
            <translation>Weiter nach links schauen</translation>
        </message>
        <message>
            <source>Look further to the right</source>
            <translation>Weiter nach rechts schauen</translation>
        </message>
        <message>
            <source>Look into a bundle</source>
            <translation>In ein Paket schauen</translation>
        </message>
        <message>
            <source>Loop</source>
            <translation>Loop</translation>
        </message>
        <message>
            <source>Loop the selection in both takes, or stop looping</source>
            <translation>Die Auswahl in beiden Aufnahmen wiederholen, oder damit aufhören</translation>
        </message>
        <message>
            <source>Loop the selection, or stop looping</source>
            <translation>Die Auswahl wiederholen, oder damit aufhören</translation>
        </message>
        <message>
            <source>Louder</source>
            <translation>Lauter</translation>
        </message>
        <message>
            <source>Loudness</source>
            <translation>Lautheit</translation>
        </message>
        <message>
            <source>Loudness, LUFS</source>
            <translation>Lautheit, LUFS</translation>
        </message>
        <message>
            <source>Loudness, LUFS: A dashed, B solid</source>
            <translation>Lautheit, LUFS: A gestrichelt, B durchgezogen</translation>
        </message>
        <message>
            <source>Major</source>
            <translation>Dur</translation>
        </message>
        <message>
            <source>Make it a marker and write its text</source>
            <translation>Zur Anmerkung machen und ihren Text schreiben</translation>
        </message>
        <message>
            <source>Make one now</source>
            <translation>Jetzt eine anlegen</translation>
        </message>
        <message>
            <source>Make tasks</source>
            <translation>Aufgaben daraus machen</translation>
        </message>
        <message>
            <source>Make tasks of the chosen remark</source>
            <translation>Aus der gewählten Bemerkung Aufgaben machen</translation>
        </message>
        <message>
            <source>Make the chosen lane lower</source>
            <translation>Die gewählte Spur niedriger machen</translation>
        </message>
        <message>
            <source>Make the chosen lane taller</source>
            <translation>Die gewählte Spur höher machen</translation>
        </message>
        <message>
            <source>Make the chosen suggestion a marker</source>
            <translation>Den gewählten Vorschlag zur Anmerkung machen</translation>
        </message>
        <message>
            <source>Make the promise</source>
            <translation>Den Vorsatz fassen</translation>
        </message>
        <message>
            <source>Making the preview…</source>
            <translation>Die Vorschau entsteht …</translation>
        </message>
        <message>
            <source>Map of the notes by day</source>
            <translation>Karte der Noten nach Tagen</translation>
        </message>
        <message>
            <source>Mark this moment of the take that is recorded</source>
            <translation>Diesen Moment der laufenden Aufnahme markieren</translation>
        </message>
        <message>
            <source>Marked while listening</source>
            <translation>Beim Anhören angemerkt</translation>
        </message>
        <message>
            <source>Marker</source>
            <translation>Anmerkung</translation>
        </message>
        <message>
            <source>Marker categories</source>
            <translation>Kategorien der Anmerkungen</translation>
        </message>
        <message>
            <source>Marker of category 1 where it plays; held: a span</source>
            <translation>Anmerkung der Kategorie 1 an der gespielten Stelle; gehalten: eine Spanne</translation>
        </message>
        <message>
            <source>Marker of category 2 where it plays; held: a span</source>
            <translation>Anmerkung der Kategorie 2 an der gespielten Stelle; gehalten: eine Spanne</translation>
        </message>
        <message>
            <source>Marker of category 3 where it plays; held: a span</source>
            <translation>Anmerkung der Kategorie 3 an der gespielten Stelle; gehalten: eine Spanne</translation>
        </message>
        <message>
            <source>Marker of category 4 where it plays; held: a span</source>
            <translation>Anmerkung der Kategorie 4 an der gespielten Stelle; gehalten: eine Spanne</translation>
        </message>
        <message>
            <source>Marker of category 5 where it plays; held: a span</source>
            <translation>Anmerkung der Kategorie 5 an der gespielten Stelle; gehalten: eine Spanne</translation>
        </message>
        <message>
            <source>Marker of category 6 where it plays; held: a span</source>
            <translation>Anmerkung der Kategorie 6 an der gespielten Stelle; gehalten: eine Spanne</translation>
        </message>
        <message>
            <source>Marker of category 7 where it plays; held: a span</source>
            <translation>Anmerkung der Kategorie 7 an der gespielten Stelle; gehalten: eine Spanne</translation>
        </message>
        <message>
            <source>Marker of category 8 where it plays; held: a span</source>
            <translation>Anmerkung der Kategorie 8 an der gespielten Stelle; gehalten: eine Spanne</translation>
        </message>
        <message>
            <source>Marker of category 9 where it plays; held: a span</source>
            <translation>Anmerkung der Kategorie 9 an der gespielten Stelle; gehalten: eine Spanne</translation>
        </message>
        <message>
            <source>Markers</source>
            <translation>Marken</translation>
        </message>
        <message>
            <source>Markers of earlier takes</source>
            <translation>Anmerkungen früherer Aufnahmen</translation>
        </message>
        <message>
            <source>Markers of the take</source>
            <translation>Anmerkungen der Aufnahme</translation>
        </message>
        <message>
            <source>Markers of your own: {count}. Show what was measured when you are done.</source>
            <translation>Eigene Anmerkungen: {count}. Danach zeigen, was gemessen wurde.</translation>
        </message>
        <message>
            <source>Markers to work on</source>
            <translation>Anmerkungen zum Bearbeiten</translation>
        </message>
        <message>
            <source>Markers you place while listening appear at their place in every later take.</source>
            <translation>Anmerkungen beim Anhören erscheinen an ihrer Stelle in jeder späteren Aufnahme.</translation>
        </message>
        <message>
            <source>Mean deviation up to</source>
            <translation>Mittlere Abweichung bis</translation>
        </message>
        <message>
            <source>Mean minutes by weekday, rest and empty days included</source>
            <translation>Mittlere Minuten nach Wochentag, Ruhe- und leere Tage eingeschlossen</translation>
        </message>
        <message>
            <source>Measure</source>
            <translation>Messgröße</translation>
        </message>
        <message>
            <source>Measure again</source>
            <translation>Neu messen</translation>
        </message>
        <message>
            <source>Measure over the weeks</source>
            <translation>Messgröße über die Wochen</translation>
        </message>
        <message>
            <source>Measure the delay</source>
            <translation>Die Verzögerung messen</translation>
        </message>
        <message>
            <source>Measure the delay after it.</source>
            <translation>Danach die Verzögerung messen.</translation>
        </message>
        <message>
            <source>Measure with these</source>
            <translation>Damit messen</translation>
        </message>
        <message>
            <source>Measured</source>
            <translation>Gemessen</translation>
        </message>
        <message>
            <source>Measuring take {done_count} of {total}</source>
            <translation>Messung {done_count} von {total}</translation>
        </message>
        <message>
            <source>Measuring was stopped.</source>
            <translation>Das Messen wurde angehalten.</translation>
        </message>
        <message>
            <source>Measuring; it takes about six seconds.</source>
            <translation>Messung läuft; sie dauert etwa sechs Sekunden.</translation>
        </message>
        <message>
            <source>Melodic minor</source>
            <translation>Melodisch Moll</translation>
        </message>
        <message>
            <source>Message</source>
            <translation>Meldung</translation>
        </message>
        <message>
            <source>Met</source>
            <translation>Erreicht</translation>
        </message>
        <message>
            <source>Min</source>
            <translation>Min</translation>
        </message>
        <message>
            <source>Minutes a month</source>
            <translation>Minuten im Monat</translation>
        </message>
        <message>
            <source>Minutes a month, the last three years</source>
            <translation>Minuten im Monat, die letzten drei Jahre</translation>
        </message>
        <message>
            <source>Minutes a week</source>
            <translation>Minuten in der Woche</translation>
        </message>
        <message>
            <source>Minutes a week, the last year</source>
            <translation>Minuten in der Woche, das letzte Jahr</translation>
        </message>
        <message>
            <source>Minutes and measured change</source>
            <translation>Minuten und gemessene Änderung</translation>
        </message>
        <message>
            <source>Minutes and measured change of each passage</source>
            <translation>Minuten und gemessene Änderung jeder Stelle</translation>
        </message>
        <message>
            <source>Minutes are a whole number.</source>
            <translation>Minuten sind eine ganze Zahl.</translation>
        </message>
        <message>
            <source>Minutes by item</source>
            <translation>Minuten nach Punkt</translation>
        </message>
        <message>
            <source>Minutes by time of day</source>
            <translation>Minuten nach Tageszeit</translation>
        </message>
        <message>
            <source>Minutes by weekday</source>
            <translation>Minuten nach Wochentag</translation>
        </message>
        <message>
            <source>Minutes from a table</source>
            <translation>Minuten aus einer Tabelle</translation>
        </message>
        <message>
            <source>Minutes in all</source>
            <translation>Minuten insgesamt</translation>
        </message>
        <message>
            <source>Minutes of {days} were added.</source>
            <translation>Minuten von {days} wurden hinzugefügt.</translation>
        </message>
        <message>
            <source>Minutes played on the forgotten clock</source>
            <translation>Auf der vergessenen Uhr gespielte Minuten</translation>
        </message>
        <message>
            <source>Minutes there are today</source>
            <translation>Minuten, die heute da sind</translation>
        </message>
        <message>
            <source>Missed</source>
            <translation>Versäumt</translation>
        </message>
        <message>
            <source>Mode</source>
            <translation>Tongeschlecht</translation>
        </message>
        <message>
            <source>Mon</source>
            <translation>Mo</translation>
        </message>
        <message>
            <source>Month from {day}</source>
            <translation>Monat ab {day}</translation>
        </message>
        <message>
            <source>More musical</source>
            <translation>Musikalischer</translation>
        </message>
        <message>
            <source>Move here</source>
            <translation>Hierher</translation>
        </message>
        <message>
            <source>Move the category down</source>
            <translation>Die Kategorie nach unten</translation>
        </message>
        <message>
            <source>Move the category up</source>
            <translation>Die Kategorie nach oben</translation>
        </message>
        <message>
            <source>Move the chosen marker to the playing position</source>
            <translation>Die gewählte Anmerkung an die Abspielposition rücken</translation>
        </message>
        <message>
            <source>Move the item down</source>
            <translation>Den Punkt nach unten</translation>
        </message>
        <message>
            <source>Move the item up</source>
            <translation>Den Punkt nach oben</translation>
        </message>
        <message>
            <source>Move the line down</source>
            <translation>Die Zeile nach unten</translation>
        </message>
        <message>
            <source>Move the line up</source>
            <translation>Die Zeile nach oben</translation>
        </message>
        <message>
            <source>MusicXML or MIDI. A copy stays in the journal; the file is not changed.</source>
            <translation>MusicXML oder MIDI. Eine Kopie bleibt im Journal; die Datei wird nicht verändert.</translation>
        </message>
        <message>
            <source>Name</source>
            <translation>Name</translation>
        </message>
        <message>
            <source>Name of kind {number}</source>
            <translation>Name der Art {number}</translation>
        </message>
        <message>
            <source>Name short and long days, or back to the year</source>
            <translation>Kurze und lange Tage benennen, oder zurück zum Jahr</translation>
        </message>
        <message>
            <source>Natural minor</source>
            <translation>Natürlich Moll</translation>
        </message>
        <message>
            <source>New</source>
            <translation>Neu</translation>
        </message>
        <message>
            <source>New category</source>
            <translation>Neue Kategorie</translation>
        </message>
        <message>
            <source>New item</source>
            <translation>Neuer Punkt</translation>
        </message>
        <message>
            <source>New passage</source>
            <translation>Neue Stelle</translation>
        </message>
        <message>
            <source>Next measure over the weeks</source>
            <translation>Nächste Messgröße über die Wochen</translation>
        </message>
        <message>
            <source>Next picture: weeks, note map, before and after</source>
            <translation>Nächstes Bild: Wochen, Notenkarte, vorher und nachher</translation>
        </message>
        <message>
            <source>Next week</source>
            <translation>Nächste Woche</translation>
        </message>
        <message>
            <source>Next weight of the chosen marker</source>
            <translation>Nächstes Gewicht der gewählten Anmerkung</translation>
        </message>
        <message>
            <source>Next year</source>
            <translation>Nächstes Jahr</translation>
        </message>
        <message>
            <source>No clip was made yet.</source>
            <translation>Es wurde noch kein Clip gemacht.</translation>
        </message>
        <message>
            <source>No difference</source>
            <translation>Kein Unterschied</translation>
        </message>
        <message>
            <source>No duty on {day}</source>
            <translation>Keine Pflicht am {day}</translation>
        </message>
        <message>
            <source>No file is chosen yet.</source>
            <translation>Noch keine Datei ist gewählt.</translation>
        </message>
        <message>
            <source>No input</source>
            <translation>Kein Eingang</translation>
        </message>
        <message>
            <source>No item</source>
            <translation>Kein Punkt</translation>
        </message>
        <message>
            <source>No item is chosen.</source>
            <translation>Kein Punkt ist gewählt.</translation>
        </message>
        <message>
            <source>No marker of an earlier take leads here.</source>
            <translation>Keine Anmerkung einer früheren Aufnahme führt hierher.</translation>
        </message>
        <message>
            <source>No marker yet. Press while it plays, hold for a span:   {keys}</source>
            <translation>Noch keine Anmerkung. Beim Abspielen drücken, für eine Spanne halten:   {keys}</translation>
        </message>
        <message>
            <source>No minutes yet</source>
            <translation>Noch keine Minuten</translation>
        </message>
        <message>
            <source>No minutes yet today</source>
            <translation>Heute noch keine Minuten</translation>
        </message>
        <message>
            <source>No new clip is offered.</source>
            <translation>Kein neuer Clip liegt vor.</translation>
        </message>
        <message>
            <source>No note was measured in both takes.</source>
            <translation>Keine Note wurde in beiden Aufnahmen gemessen.</translation>
        </message>
        <message>
            <source>No others in use</source>
            <translation>Keine anderen im Gebrauch</translation>
        </message>
        <message>
            <source>No passage</source>
            <translation>Keine Stelle</translation>
        </message>
        <message>
            <source>No passage has been measured yet.</source>
            <translation>Noch keine Stelle wurde gemessen.</translation>
        </message>
        <message>
            <source>No promise yet. A promise is a number of days with a rule.</source>
            <translation>Noch kein Vorsatz. Ein Vorsatz ist eine Zahl von Tagen mit einer Regel.</translation>
        </message>
        <message>
            <source>No remark is chosen.</source>
            <translation>Keine Bemerkung ist gewählt.</translation>
        </message>
        <message>
            <source>No retake</source>
            <translation>Kein zweiter Versuch</translation>
        </message>
        <message>
            <source>No retake: one take of this passage each practice day</source>
            <translation>Kein zweiter Versuch: eine Aufnahme dieser Stelle je Übetag</translation>
        </message>
        <message>
            <source>No score</source>
            <translation>Keine Noten</translation>
        </message>
        <message>
            <source>No score is chosen.</source>
            <translation>Keine Noten sind gewählt.</translation>
        </message>
        <message>
            <source>No take yet today. Record one, or drop recordings anywhere on this window.</source>
            <translation>Heute noch keine Aufnahme. Aufnehmen oder Aufnahmen irgendwo auf dieses Fenster ziehen.</translation>
        </message>
        <message>
            <source>No takes yet</source>
            <translation>Noch keine Aufnahmen</translation>
        </message>
        <message>
            <source>No, gone</source>
            <translation>Nein, weg</translation>
        </message>
        <message>
            <source>None</source>
            <translation>Keine</translation>
        </message>
        <message>
            <source>None of these can be filed.</source>
            <translation>Nichts davon lässt sich ablegen.</translation>
        </message>
        <message>
            <source>Not known</source>
            <translation>Unbekannt</translation>
        </message>
        <message>
            <source>Not measured yet.</source>
            <translation>Noch nicht gemessen.</translation>
        </message>
        <message>
            <source>Not met</source>
            <translation>Nicht erreicht</translation>
        </message>
        <message>
            <source>Not running</source>
            <translation>Läuft nicht</translation>
        </message>
        <message>
            <source>Not this one</source>
            <translation>Diesen nicht</translation>
        </message>
        <message>
            <source>Note</source>
            <translation>Note</translation>
        </message>
        <message>
            <source>Note map by day</source>
            <translation>Notenkarte nach Tagen</translation>
        </message>
        <message>
            <source>Note the date</source>
            <translation>Termin notieren</translation>
        </message>
        <message>
            <source>Notes</source>
            <translation>Noten</translation>
        </message>
        <message>
            <source>Notes a beat</source>
            <translation>Noten pro Schlag</translation>
        </message>
        <message>
            <source>Notes against their targets</source>
            <translation>Noten gegen ihre Zieltöne</translation>
        </message>
        <message>
            <source>Notes as MIDI</source>
            <translation>Noten als MIDI</translation>
        </message>
        <message>
            <source>Notes before and after</source>
            <translation>Noten vorher und nachher</translation>
        </message>
        <message>
            <source>Notes by what the plausible targets say</source>
            <translation>Noten nach dem, was die möglichen Zieltöne sagen</translation>
        </message>
        <message>
            <source>Notes in one bow or breath</source>
            <translation>Noten auf einem Bogen oder Atem</translation>
        </message>
        <message>
            <source>Notes of both takes</source>
            <translation>Noten beider Aufnahmen</translation>
        </message>
        <message>
            <source>Notes of the take</source>
            <translation>Noten der Aufnahme</translation>
        </message>
        <message>
            <source>Notes, markers, minutes and promises become what they were then. Recordings made since stay. What is replaced is set aside, so you can come back. The window closes for a moment.</source>
            <translation>Notizen, Anmerkungen, Minuten und Vorsätze werden, was sie damals waren. Seither gemachte Aufnahmen bleiben. Was ersetzt wird, bleibt beiseite erhalten, der Weg zurück steht also offen. Das Fenster schließt sich einen Moment.</translation>
        </message>
        <message>
            <source>Notes, pitch, beats and markers (JAMS)</source>
            <translation>Noten, Tonhöhe, Schläge und Anmerkungen (JAMS)</translation>
        </message>
        <message>
            <source>Nothing is being recorded.</source>
            <translation>Es wird nichts aufgenommen.</translation>
        </message>
        <message>
            <source>Nothing is open. Markers you place while listening come back here until settled.</source>
            <translation>Nichts ist offen. Anmerkungen beim Anhören kommen hierher zurück, bis sie erledigt sind.</translation>
        </message>
        <message>
            <source>Nothing is set. What is set turns up in the plan with its reason.</source>
            <translation>Nichts ist aufgegeben. Was aufgegeben ist, erscheint mit seinem Grund im Plan.</translation>
        </message>
        <message>
            <source>Nothing noted.</source>
            <translation>Nichts notiert.</translation>
        </message>
        <message>
            <source>Nothing put away</source>
            <translation>Nichts weggelegt</translation>
        </message>
        <message>
            <source>Nothing sounds</source>
            <translation>Nichts klingt</translation>
        </message>
        <message>
            <source>Nothing to mark</source>
            <translation>Nichts anzumerken</translation>
        </message>
        <message>
            <source>Nothing to mark: show what was measured</source>
            <translation>Nichts anzumerken: zeigen, was gemessen wurde</translation>
        </message>
        <message>
            <source>Nothing was written since the window was opened.</source>
            <translation>Seit dem Öffnen des Fensters wurde nichts geschrieben.</translation>
        </message>
        <message>
            <source>Numbers</source>
            <translation>Zahlen</translation>
        </message>
        <message>
            <source>Numbers of the take</source>
            <translation>Zahlen der Aufnahme</translation>
        </message>
        <message>
            <source>Octaves</source>
            <translation>Oktaven</translation>
        </message>
        <message>
            <source>Of many at once some differ by chance; a word stands only where that is not enough.</source>
            <translation>Unter vielen auf einmal weichen einige zufällig ab; ein Wort steht nur, wo der Zufall nicht genügt.</translation>
        </message>
        <message>
            <source>Offer the category no longer; its markers stay</source>
            <translation>Die Kategorie nicht mehr anbieten; ihre Anmerkungen bleiben</translation>
        </message>
        <message>
            <source>Offer the item no longer; its minutes stay</source>
            <translation>Den Punkt nicht mehr anbieten; seine Minuten bleiben</translation>
        </message>
        <message>
            <source>On a break: {promises}.</source>
            <translation>Unterbrochen: {promises}.</translation>
        </message>
        <message>
            <source>On first note</source>
            <translation>Beim ersten Ton</translation>
        </message>
        <message>
            <source>One chance. Begin when you are ready.</source>
            <translation>Eine Chance. Beginnen, wenn alles bereit ist.</translation>
        </message>
        <message>
            <source>One is made on every day on which something changed. Those of the last 7 days, the last 8 weeks and of every year are kept. They hold what you wrote and counted; recordings are never touched.</source>
            <translation>An jedem Tag mit einer Änderung entsteht eine. Die der letzten 7 Tage, der letzten 8 Wochen und jedes Jahres bleiben. Sie enthalten Geschriebenes und Gezähltes; Aufnahmen werden nie berührt.</translation>
        </message>
        <message>
            <source>One thing a line: each line can become a task.</source>
            <translation>Eine Sache je Zeile: Jede Zeile kann eine Aufgabe werden.</translation>
        </message>
        <message>
            <source>One thing to listen for, such as: third finger higher in bar 5</source>
            <translation>Eins, worauf zu hören ist, etwa: dritter Finger höher in Takt 5</translation>
        </message>
        <message>
            <source>Only five</source>
            <translation>Nur fünf</translation>
        </message>
        <message>
            <source>Only markers with these words</source>
            <translation>Nur Anmerkungen mit diesen Wörtern</translation>
        </message>
        <message>
            <source>Only this author</source>
            <translation>Nur von dieser Person</translation>
        </message>
        <message>
            <source>Only this category</source>
            <translation>Nur diese Kategorie</translation>
        </message>
        <message>
            <source>Only this state</source>
            <translation>Nur dieser Stand</translation>
        </message>
        <message>
            <source>Open</source>
            <translation>Öffnen</translation>
        </message>
        <message>
            <source>Open a bundle first.</source>
            <translation>Zuerst ein Paket öffnen.</translation>
        </message>
        <message>
            <source>Open a bundle to look at and write into</source>
            <translation>Ein Paket zum Ansehen und Hineinschreiben öffnen</translation>
        </message>
        <message>
            <source>Open formats</source>
            <translation>Offene Formate</translation>
        </message>
        <message>
            <source>Open strings</source>
            <translation>Leere Saiten</translation>
        </message>
        <message>
            <source>Open the folder</source>
            <translation>Den Ordner öffnen</translation>
        </message>
        <message>
            <source>Open the folder of what was written last</source>
            <translation>Den Ordner des zuletzt Geschriebenen öffnen</translation>
        </message>
        <message>
            <source>Open the guide</source>
            <translation>Das Handbuch öffnen</translation>
        </message>
        <message>
            <source>Open your own journal first.</source>
            <translation>Zuerst das eigene Journal öffnen.</translation>
        </message>
        <message>
            <source>Or takes a day</source>
            <translation>Oder Aufnahmen am Tag</translation>
        </message>
        <message>
            <source>Or type:</source>
            <translation>Oder eintippen:</translation>
        </message>
        <message>
            <source>Output, click and drone while listening</source>
            <translation>Ausgang, Klick und Bordun beim Anhören</translation>
        </message>
        <message>
            <source>Over all takes of this passage:</source>
            <translation>Über alle Aufnahmen dieser Stelle:</translation>
        </message>
        <message>
            <source>Over the weeks</source>
            <translation>Über die Wochen</translation>
        </message>
        <message>
            <source>Overlaid</source>
            <translation>Übereinander</translation>
        </message>
        <message>
            <source>Overlaid, or one above the other</source>
            <translation>Übereinandergelegt oder untereinander</translation>
        </message>
        <message>
            <source>Own key for: {value}</source>
            <translation>Eigene Taste für: {value}</translation>
        </message>
        <message>
            <source>Pages (*.html)</source>
            <translation>Seiten (*.html)</translation>
        </message>
        <message>
            <source>Pages of the guide</source>
            <translation>Seiten des Handbuchs</translation>
        </message>
        <message>
            <source>Pain is a reason to stop. A pause every half hour helps; keep headphones low, above all when you loop.</source>
            <translation>Schmerz ist ein Grund aufzuhören. Eine Pause jede halbe Stunde hilft; Kopfhörer leise halten, vor allem in der Schleife.</translation>
        </message>
        <message>
            <source>Part</source>
            <translation>Stimme</translation>
        </message>
        <message>
            <source>Part that is kept</source>
            <translation>Behaltener Teil</translation>
        </message>
        <message>
            <source>Partly</source>
            <translation>Teilweise</translation>
        </message>
        <message>
            <source>Passage</source>
            <translation>Stelle</translation>
        </message>
        <message>
            <source>Passage it is for</source>
            <translation>Stelle, für die es ist</translation>
        </message>
        <message>
            <source>Passage of {name}</source>
            <translation>Stelle von {name}</translation>
        </message>
        <message>
            <source>Passage, bars or notes</source>
            <translation>Stelle, Takte oder Noten</translation>
        </message>
        <message>
            <source>Passages of the rehearsal, in the order of playing</source>
            <translation>Stellen der Probe in der Reihenfolge des Spielens</translation>
        </message>
        <message>
            <source>Passagework</source>
            <translation>Passagework</translation>
        </message>
        <message>
            <source>Passagework could not open</source>
            <translation>Passagework konnte nicht öffnen</translation>
        </message>
        <message>
            <source>Pause</source>
            <translation>Pause</translation>
        </message>
        <message>
            <source>Pause from</source>
            <translation>Unterbrechen ab</translation>
        </message>
        <message>
            <source>Pause the clock</source>
            <translation>Die Uhr anhalten</translation>
        </message>
        <message>
            <source>Pause the promise on these days</source>
            <translation>Den Vorsatz an diesen Tagen unterbrechen</translation>
        </message>
        <message>
            <source>Pause until</source>
            <translation>Unterbrechen bis</translation>
        </message>
        <message>
            <source>Paused</source>
            <translation>Pausiert</translation>
        </message>
        <message>
            <source>Piano or a backing sound plays too</source>
            <translation>Klavier oder eine Begleitung klingt mit</translation>
        </message>
        <message>
            <source>Picture</source>
            <translation>Bild</translation>
        </message>
        <message>
            <source>Picture (*.png);;Drawing (*.svg);;Document (*.pdf);;Table (*.csv)</source>
            <translation>Bild (*.png);;Zeichnung (*.svg);;Dokument (*.pdf);;Tabelle (*.csv)</translation>
        </message>
        <message>
            <source>Picture (*.png);;Drawing (*.svg);;Table (*.csv)</source>
            <translation>Bild (*.png);;Zeichnung (*.svg);;Tabelle (*.csv)</translation>
        </message>
        <message>
            <source>Picture larger, or back</source>
            <translation>Bild größer, oder zurück</translation>
        </message>
        <message>
            <source>Picture of the take</source>
            <translation>Bild der Aufnahme</translation>
        </message>
        <message>
            <source>Piece</source>
            <translation>Stück</translation>
        </message>
        <message>
            <source>Place markers on Listen and write remarks here. The reply holds what you added, and is sent back like any other file.</source>
            <translation>Beim Anhören Anmerkungen setzen und hier Bemerkungen schreiben. Die Antwort enthält das Hinzugefügte und wird wie jede andere Datei zurückgeschickt.</translation>
        </message>
        <message>
            <source>Placed {day}.</source>
            <translation>Gesetzt {day}.</translation>
        </message>
        <message>
            <source>Plan</source>
            <translation>Plan</translation>
        </message>
        <message>
            <source>Plan, proposed: {planned}</source>
            <translation>Plan, vorgeschlagen: {planned}</translation>
        </message>
        <message>
            <source>Plan: {done} of {planned} done</source>
            <translation>Plan: {done} von {planned} erledigt</translation>
        </message>
        <message>
            <source>Play</source>
            <translation>Hören</translation>
        </message>
        <message>
            <source>Play it now</source>
            <translation>Jetzt spielen</translation>
        </message>
        <message>
            <source>Play the passage earlier</source>
            <translation>Die Stelle früher spielen</translation>
        </message>
        <message>
            <source>Play the passage later</source>
            <translation>Die Stelle später spielen</translation>
        </message>
        <message>
            <source>Play the sweeps</source>
            <translation>Die Prüftöne abspielen</translation>
        </message>
        <message>
            <source>Play, or pause</source>
            <translation>Abspielen oder anhalten</translation>
        </message>
        <message>
            <source>Played with a mute</source>
            <translation>Mit Dämpfer gespielt</translation>
        </message>
        <message>
            <source>Practice</source>
            <translation>Üben</translation>
        </message>
        <message>
            <source>Practice clock</source>
            <translation>Übeuhr</translation>
        </message>
        <message>
            <source>Practice day</source>
            <translation>Übetag</translation>
        </message>
        <message>
            <source>Practice day of {name}</source>
            <translation>Übetag von {name}</translation>
        </message>
        <message>
            <source>Practice day: what is played after midnight still belongs to it</source>
            <translation>Übetag: Nach Mitternacht Gespieltes gehört noch dazu</translation>
        </message>
        <message>
            <source>Practice from the music stand</source>
            <translation>Üben am Notenpult</translation>
        </message>
        <message>
            <source>Practice in {year}</source>
            <translation>Üben im Jahr {year}</translation>
        </message>
        <message>
            <source>Practise it</source>
            <translation>Üben</translation>
        </message>
        <message>
            <source>Practised in one long recording? Each run through the passage can be found.</source>
            <translation>In einer langen Aufnahme geübt? Jeder Durchgang durch die Stelle lässt sich finden.</translation>
        </message>
        <message>
            <source>Preview; nothing is written yet</source>
            <translation>Vorschau; noch wird nichts geschrieben</translation>
        </message>
        <message>
            <source>Print</source>
            <translation>Drucken</translation>
        </message>
        <message>
            <source>Print the year</source>
            <translation>Das Jahr drucken</translation>
        </message>
        <message>
            <source>Progress</source>
            <translation>Fortschritt</translation>
        </message>
        <message>
            <source>Progress of the import</source>
            <translation>Fortschritt des Imports</translation>
        </message>
        <message>
            <source>Promise</source>
            <translation>Vorsatz</translation>
        </message>
        <message>
            <source>Promises</source>
            <translation>Vorsätze</translation>
        </message>
        <message>
            <source>Promises, or back to the year</source>
            <translation>Vorsätze, oder zurück zum Jahr</translation>
        </message>
        <message>
            <source>Promises, plans and settings go along.</source>
            <translation>Vorsätze, Pläne und Einstellungen gehen mit.</translation>
        </message>
        <message>
            <source>Propose</source>
            <translation>Vorschlagen</translation>
        </message>
        <message>
            <source>Propose a plan</source>
            <translation>Einen Plan vorschlagen</translation>
        </message>
        <message>
            <source>Propose a plan for the minutes there are</source>
            <translation>Einen Plan für die vorhandenen Minuten vorschlagen</translation>
        </message>
        <message>
            <source>Put aside</source>
            <translation>Beiseitelegen</translation>
        </message>
        <message>
            <source>Put aside for this passage.</source>
            <translation>Für diese Stelle beiseitegelegt.</translation>
        </message>
        <message>
            <source>Put away</source>
            <translation>Weglegen</translation>
        </message>
        <message>
            <source>Put the chosen suggestion aside for this passage</source>
            <translation>Den gewählten Vorschlag für diese Stelle beiseitelegen</translation>
        </message>
        <message>
            <source>Put the message away</source>
            <translation>Die Meldung weglegen</translation>
        </message>
        <message>
            <source>Put the message away, or clear the selection</source>
            <translation>Die Meldung weglegen oder die Auswahl aufheben</translation>
        </message>
        <message>
            <source>Put the microphone near the loudspeaker, or join output and input with a cable.</source>
            <translation>Das Mikrofon nahe an den Lautsprecher stellen oder Ausgang und Eingang mit einem Kabel verbinden.</translation>
        </message>
        <message>
            <source>Pythagorean</source>
            <translation>Pythagoreisch</translation>
        </message>
        <message>
            <source>Quiet now</source>
            <translation>Jetzt still</translation>
        </message>
        <message>
            <source>Quieter</source>
            <translation>Leiser</translation>
        </message>
        <message>
            <source>Reaction time taken off a marker</source>
            <translation>Von einer Anmerkung abgezogene Reaktionszeit</translation>
        </message>
        <message>
            <source>Reading both takes</source>
            <translation>Beide Aufnahmen werden gelesen</translation>
        </message>
        <message>
            <source>Reading the measured weeks of each passage…</source>
            <translation>Die gemessenen Wochen jeder Stelle werden gelesen …</translation>
        </message>
        <message>
            <source>Reading the score</source>
            <translation>Die Noten werden gelesen</translation>
        </message>
        <message>
            <source>Reading the sound…</source>
            <translation>Der Klang wird gelesen …</translation>
        </message>
        <message>
            <source>Reading {name}</source>
            <translation>{name} wird gelesen</translation>
        </message>
        <message>
            <source>Reading {name} …</source>
            <translation>{name} wird gelesen …</translation>
        </message>
        <message>
            <source>Reading {paths}</source>
            <translation>Gelesen wird: {paths}</translation>
        </message>
        <message>
            <source>Ready</source>
            <translation>Bereit</translation>
        </message>
        <message>
            <source>Record</source>
            <translation>Aufnehmen</translation>
        </message>
        <message>
            <source>Record a take</source>
            <translation>Aufnehmen</translation>
        </message>
        <message>
            <source>Record first, then mark.</source>
            <translation>Zuerst aufnehmen, dann markieren.</translation>
        </message>
        <message>
            <source>Record from the first note on, or wait no longer</source>
            <translation>Ab dem ersten Ton aufnehmen, oder nicht mehr warten</translation>
        </message>
        <message>
            <source>Record from the first note on, until it is silent</source>
            <translation>Ab dem ersten Ton aufnehmen, bis es still ist</translation>
        </message>
        <message>
            <source>Record it.</source>
            <translation>Aufnehmen.</translation>
        </message>
        <message>
            <source>Record one on the Practice page, or drop recordings anywhere on this window.</source>
            <translation>Auf der Seite „Üben“ aufnehmen oder Aufnahmen irgendwo auf dieses Fenster ziehen.</translation>
        </message>
        <message>
            <source>Record or import the same passage on another day, then come back.</source>
            <translation>Dieselbe Stelle an einem anderen Tag aufnehmen oder importieren, dann wiederkommen.</translation>
        </message>
        <message>
            <source>Record, or stop recording</source>
            <translation>Aufnehmen, oder die Aufnahme beenden</translation>
        </message>
        <message>
            <source>Recording</source>
            <translation>Aufnahme</translation>
        </message>
        <message>
            <source>Recording begins with the first note</source>
            <translation>Die Aufnahme beginnt mit dem ersten Ton</translation>
        </message>
        <message>
            <source>Recording. Play on, whatever happens.</source>
            <translation>Aufnahme läuft. Weiterspielen, was auch geschieht.</translation>
        </message>
        <message>
            <source>Recordings ({kinds});;All files (*)</source>
            <translation>Aufnahmen ({kinds});;Alle Dateien (*)</translation>
        </message>
        <message>
            <source>Redo</source>
            <translation>Wiederholen</translation>
        </message>
        <message>
            <source>Reference A</source>
            <translation>Stimmton A</translation>
        </message>
        <message>
            <source>Rehearsal, {number} of {count}: {name}.</source>
            <translation>Probe, {number} von {count}: {name}.</translation>
        </message>
        <message>
            <source>Rehearse</source>
            <translation>Proben</translation>
        </message>
        <message>
            <source>Remarks</source>
            <translation>Bemerkungen</translation>
        </message>
        <message>
            <source>Remarks, by lesson</source>
            <translation>Bemerkungen, nach Stunde</translation>
        </message>
        <message>
            <source>Remind me of practice at</source>
            <translation>Ans Üben erinnern um</translation>
        </message>
        <message>
            <source>Repetitions</source>
            <translation>Durchgänge</translation>
        </message>
        <message>
            <source>Replies (*.pwreply)</source>
            <translation>Antworten (*.pwreply)</translation>
        </message>
        <message>
            <source>Reply</source>
            <translation>Antwort</translation>
        </message>
        <message>
            <source>Rest day</source>
            <translation>Ruhetag</translation>
        </message>
        <message>
            <source>Rest day, or take the mark away</source>
            <translation>Ruhetag, oder die Kennzeichnung entfernen</translation>
        </message>
        <message>
            <source>Rest days allowed</source>
            <translation>Erlaubte Ruhetage</translation>
        </message>
        <message>
            <source>Rest taken</source>
            <translation>Genommene Ruhe</translation>
        </message>
        <message>
            <source>Retire</source>
            <translation>Zurückziehen</translation>
        </message>
        <message>
            <source>Rhythm</source>
            <translation>Rhythmus</translation>
        </message>
        <message>
            <source>Ring: {before}. Dot: {after}. Band: within 10 cents.</source>
            <translation>Ring: {before}. Punkt: {after}. Band: innerhalb 10 Cent.</translation>
        </message>
        <message>
            <source>Rubato: no steady beat</source>
            <translation>Rubato: kein fester Schlag</translation>
        </message>
        <message>
            <source>Running</source>
            <translation>Läuft</translation>
        </message>
        <message>
            <source>Runs through the passage</source>
            <translation>Durchgänge durch die Stelle</translation>
        </message>
        <message>
            <source>Sat</source>
            <translation>Sa</translation>
        </message>
        <message>
            <source>Save</source>
            <translation>Sichern</translation>
        </message>
        <message>
            <source>Save as text</source>
            <translation>Als Text speichern</translation>
        </message>
        <message>
            <source>Save in open formats</source>
            <translation>In offenen Formaten speichern</translation>
        </message>
        <message>
            <source>Save it as PDF instead.</source>
            <translation>Stattdessen als PDF speichern.</translation>
        </message>
        <message>
            <source>Save picture</source>
            <translation>Bild speichern</translation>
        </message>
        <message>
            <source>Save the picture as PNG, SVG or CSV</source>
            <translation>Das Bild als PNG, SVG oder CSV speichern</translation>
        </message>
        <message>
            <source>Save the text</source>
            <translation>Den Text speichern</translation>
        </message>
        <message>
            <source>Save the text as a file</source>
            <translation>Den Text als Datei speichern</translation>
        </message>
        <message>
            <source>Save the year</source>
            <translation>Das Jahr speichern</translation>
        </message>
        <message>
            <source>Save the year as a picture, document or table</source>
            <translation>Das Jahr als Bild, Dokument oder Tabelle speichern</translation>
        </message>
        <message>
            <source>Save this take in open formats</source>
            <translation>Diese Aufnahme in offenen Formaten speichern</translation>
        </message>
        <message>
            <source>Saved as {name}.</source>
            <translation>Gespeichert als {name}.</translation>
        </message>
        <message>
            <source>Saved as {path}.</source>
            <translation>Gespeichert als {path}.</translation>
        </message>
        <message>
            <source>Say how the days are written; some can be read in several ways.</source>
            <translation>Angeben, wie die Tage geschrieben sind; manche lassen sich mehrfach lesen.</translation>
        </message>
        <message>
            <source>Say which column holds the days and which the practice.</source>
            <translation>Angeben, welche Spalte die Tage und welche das Üben enthält.</translation>
        </message>
        <message>
            <source>Scale</source>
            <translation>Tonleiter</translation>
        </message>
        <message>
            <source>Scale, arpeggio, broken thirds</source>
            <translation>Tonleiter, Arpeggio, gebrochene Terzen</translation>
        </message>
        <message>
            <source>Scales</source>
            <translation>Tonleitern</translation>
        </message>
        <message>
            <source>Scales in two octaves, a study, quartet</source>
            <translation>Tonleitern über zwei Oktaven, eine Etüde, Quartett</translation>
        </message>
        <message>
            <source>Score</source>
            <translation>Noten</translation>
        </message>
        <message>
            <source>Scores (*.musicxml *.mxl *.xml *.mid *.midi)</source>
            <translation>Noten (*.musicxml *.mxl *.xml *.mid *.midi)</translation>
        </message>
        <message>
            <source>Selection ends here</source>
            <translation>Die Auswahl endet hier</translation>
        </message>
        <message>
            <source>Selection starts here</source>
            <translation>Die Auswahl beginnt hier</translation>
        </message>
        <message>
            <source>Set by hand</source>
            <translation>Von Hand eingestellt</translation>
        </message>
        <message>
            <source>Set for the lesson</source>
            <translation>Für die Stunde aufgegeben</translation>
        </message>
        <message>
            <source>Set work</source>
            <translation>Aufgegebenes</translation>
        </message>
        <message>
            <source>Sets itself</source>
            <translation>Stellt sich selbst ein</translation>
        </message>
        <message>
            <source>Settings</source>
            <translation>Einstellungen</translation>
        </message>
        <message>
            <source>Settings of this journal</source>
            <translation>Einstellungen dieses Journals</translation>
        </message>
        <message>
            <source>Settle the chosen marker, or let it return</source>
            <translation>Die gewählte Anmerkung erledigen, oder zurückkehren lassen</translation>
        </message>
        <message>
            <source>Shape, dB: A dashed, B solid, moved by {db} onto A's level</source>
            <translation>Verlauf, dB: A gestrichelt, B durchgezogen, um {db} auf den Pegel von A verschoben</translation>
        </message>
        <message>
            <source>Share clips</source>
            <translation>Clips teilen</translation>
        </message>
        <message>
            <source>Share clips of these days</source>
            <translation>Clips dieser Tage teilen</translation>
        </message>
        <message>
            <source>Share the selection as a clip</source>
            <translation>Die Auswahl als Clip teilen</translation>
        </message>
        <message>
            <source>Share today's number</source>
            <translation>Die heutige Zahl teilen</translation>
        </message>
        <message>
            <source>Shared</source>
            <translation>Geteilt</translation>
        </message>
        <message>
            <source>Short, long</source>
            <translation>Kurz, lang</translation>
        </message>
        <message>
            <source>Show</source>
            <translation>Zeigen</translation>
        </message>
        <message>
            <source>Show all keys</source>
            <translation>Alle Tasten zeigen</translation>
        </message>
        <message>
            <source>Show all suggestions, or only the clearest five</source>
            <translation>Alle Vorschläge zeigen, oder nur die fünf deutlichsten</translation>
        </message>
        <message>
            <source>Show bundles and replies</source>
            <translation>Pakete und Antworten zeigen</translation>
        </message>
        <message>
            <source>Show the changes from A to B</source>
            <translation>Die Änderungen von A zu B zeigen</translation>
        </message>
        <message>
            <source>Show the changes over days</source>
            <translation>Die Änderungen über Tage zeigen</translation>
        </message>
        <message>
            <source>Show the markers</source>
            <translation>Die Anmerkungen zeigen</translation>
        </message>
        <message>
            <source>Show the markers carried over</source>
            <translation>Die übertragenen Anmerkungen zeigen</translation>
        </message>
        <message>
            <source>Show the notes</source>
            <translation>Die Noten zeigen</translation>
        </message>
        <message>
            <source>Show the notes of both takes</source>
            <translation>Die Noten beider Aufnahmen zeigen</translation>
        </message>
        <message>
            <source>Show the numbers</source>
            <translation>Die Zahlen zeigen</translation>
        </message>
        <message>
            <source>Show the picture, or hide it</source>
            <translation>Das Bild zeigen oder verbergen</translation>
        </message>
        <message>
            <source>Show the take's settings</source>
            <translation>Die Einstellungen der Aufnahme zeigen</translation>
        </message>
        <message>
            <source>Show the teacher's remarks</source>
            <translation>Die Bemerkungen der Lehrkraft zeigen</translation>
        </message>
        <message>
            <source>Show the tempo ladder and repetitions</source>
            <translation>Tempoleiter und Durchgänge zeigen</translation>
        </message>
        <message>
            <source>Show the whole take</source>
            <translation>Die ganze Aufnahme zeigen</translation>
        </message>
        <message>
            <source>Show what the measurements suggest</source>
            <translation>Zeigen, was die Messungen vorschlagen</translation>
        </message>
        <message>
            <source>Show what was measured, after your own markers</source>
            <translation>Nach den eigenen Anmerkungen zeigen, was gemessen wurde</translation>
        </message>
        <message>
            <source>Show what was shared</source>
            <translation>Zeigen, was geteilt wurde</translation>
        </message>
        <message>
            <source>Silence</source>
            <translation>Stille</translation>
        </message>
        <message>
            <source>Slower</source>
            <translation>Langsamer</translation>
        </message>
        <message>
            <source>Somebody else's days</source>
            <translation>Die Tage von jemand anderem</translation>
        </message>
        <message>
            <source>Somebody's days, {first} to {last}, out of a bundle. What you mark and write is the teacher's; nothing is recorded or counted here. Lesson writes the reply.</source>
            <translation>Tage von jemandem, {first} bis {last}, aus einem Paket. Was hier angemerkt und geschrieben wird, kommt von der Lehrkraft; aufgenommen oder gezählt wird hier nichts. Die Seite „Stunde“ schreibt die Antwort.</translation>
        </message>
        <message>
            <source>Something is still being written.</source>
            <translation>Etwas wird noch geschrieben.</translation>
        </message>
        <message>
            <source>Something went wrong that should not have. Your recordings are safe: finished files are never written again.</source>
            <translation>Etwas ging schief, was nicht hätte sein dürfen. Die Aufnahmen sind sicher: Fertige Dateien werden nie wieder geschrieben.</translation>
        </message>
        <message>
            <source>Sound</source>
            <translation>Klang</translation>
        </message>
        <message>
            <source>Sound alone (M4A)</source>
            <translation>Nur der Klang (M4A)</translation>
        </message>
        <message>
            <source>Sound held ready</source>
            <translation>Bereitgehaltener Klang</translation>
        </message>
        <message>
            <source>Sound output</source>
            <translation>Tonausgang</translation>
        </message>
        <message>
            <source>Sound with markers as chapters (FLAC)</source>
            <translation>Klang mit Anmerkungen als Kapiteln (FLAC)</translation>
        </message>
        <message>
            <source>Sound with markers as cue points (WAV)</source>
            <translation>Klang mit Anmerkungen als Cue-Punkten (WAV)</translation>
        </message>
        <message>
            <source>Speed</source>
            <translation>Tempo</translation>
        </message>
        <message>
            <source>Speed as played</source>
            <translation>Geschwindigkeit wie gespielt</translation>
        </message>
        <message>
            <source>Speed in percent</source>
            <translation>Geschwindigkeit in Prozent</translation>
        </message>
        <message>
            <source>Spells the notes, and says which targets are plausible.</source>
            <translation>Bestimmt die Schreibweise der Noten und sagt, welche Zieltöne möglich sind.</translation>
        </message>
        <message>
            <source>Start</source>
            <translation>Start</translation>
        </message>
        <message>
            <source>Start of the part kept of {name}</source>
            <translation>Anfang des behaltenen Teils von {name}</translation>
        </message>
        <message>
            <source>Start the practice clock, pause it, or go on</source>
            <translation>Die Übeuhr starten, anhalten oder weiterlaufen lassen</translation>
        </message>
        <message>
            <source>State</source>
            <translation>Stand</translation>
        </message>
        <message>
            <source>Stays behind, and is not in the clip:</source>
            <translation>Bleibt zurück und ist nicht im Clip:</translation>
        </message>
        <message>
            <source>Steadier</source>
            <translation>Gleichmäßiger</translation>
        </message>
        <message>
            <source>Step</source>
            <translation>Stufe</translation>
        </message>
        <message>
            <source>Still there? No</source>
            <translation>Noch da? Nein</translation>
        </message>
        <message>
            <source>Still there? Take the answer back</source>
            <translation>Noch da? Die Antwort zurücknehmen</translation>
        </message>
        <message>
            <source>Still there? Yes</source>
            <translation>Noch da? Ja</translation>
        </message>
        <message>
            <source>Still there? {what}, {place}</source>
            <translation>Noch da? {what}, {place}</translation>
        </message>
        <message>
            <source>Still to come. Rest can be planned.</source>
            <translation>Kommt noch. Ruhe lässt sich planen.</translation>
        </message>
        <message>
            <source>Still to keep</source>
            <translation>Noch zu halten</translation>
        </message>
        <message>
            <source>Stop</source>
            <translation>Stopp</translation>
        </message>
        <message>
            <source>Stop it first, then go back.</source>
            <translation>Zuerst beenden, dann zurückgehen.</translation>
        </message>
        <message>
            <source>Stop it first.</source>
            <translation>Zuerst beenden.</translation>
        </message>
        <message>
            <source>Stop listening</source>
            <translation>Nicht mehr mithören</translation>
        </message>
        <message>
            <source>Stop recording</source>
            <translation>Aufnahme beenden</translation>
        </message>
        <message>
            <source>Stop the practice clock</source>
            <translation>Die Übeuhr stoppen</translation>
        </message>
        <message>
            <source>Stopped; nothing unfinished is left.</source>
            <translation>Angehalten; nichts Unfertiges ist übrig.</translation>
        </message>
        <message>
            <source>Suggest a break after</source>
            <translation>Pause vorschlagen nach</translation>
        </message>
        <message>
            <source>Suggested</source>
            <translation>Ideen</translation>
        </message>
        <message>
            <source>Suggested by the measurements, the clearest first. Yours to decide.</source>
            <translation>Vorschläge aus den Messungen, die deutlichsten zuerst. Die Entscheidung liegt beim Ohr.</translation>
        </message>
        <message>
            <source>Suggestions from the measurements</source>
            <translation>Vorschläge aus den Messungen</translation>
        </message>
        <message>
            <source>Sun</source>
            <translation>So</translation>
        </message>
        <message>
            <source>Swap</source>
            <translation>Tauschen</translation>
        </message>
        <message>
            <source>Swap A and B</source>
            <translation>A und B tauschen</translation>
        </message>
        <message>
            <source>Switch the clock to the next item</source>
            <translation>Die Uhr auf den nächsten Punkt schalten</translation>
        </message>
        <message>
            <source>Switch to the same place in the other take</source>
            <translation>An dieselbe Stelle der anderen Aufnahme wechseln</translation>
        </message>
        <message>
            <source>Table (*.csv *.tsv *.txt);;Every file (*)</source>
            <translation>Tabelle (*.csv *.tsv *.txt);;Jede Datei (*)</translation>
        </message>
        <message>
            <source>Table of the days (CSV)</source>
            <translation>Tabelle der Tage (CSV)</translation>
        </message>
        <message>
            <source>Table of the markers (CSV)</source>
            <translation>Tabelle der Anmerkungen (CSV)</translation>
        </message>
        <message>
            <source>Table of the notes (CSV)</source>
            <translation>Tabelle der Noten (CSV)</translation>
        </message>
        <message>
            <source>Tables, measurements, recordings</source>
            <translation>Tabellen, Messungen, Aufnahmen</translation>
        </message>
        <message>
            <source>Take</source>
            <translation>Take</translation>
        </message>
        <message>
            <source>Take A</source>
            <translation>Aufnahme A</translation>
        </message>
        <message>
            <source>Take A, deviation in cents</source>
            <translation>Aufnahme A, Abweichung in Cent</translation>
        </message>
        <message>
            <source>Take B</source>
            <translation>Aufnahme B</translation>
        </message>
        <message>
            <source>Take B, deviation in cents</source>
            <translation>Aufnahme B, Abweichung in Cent</translation>
        </message>
        <message>
            <source>Take B, deviation in cents on A's time axis</source>
            <translation>Aufnahme B, Abweichung in Cent auf der Zeitachse von A</translation>
        </message>
        <message>
            <source>Take a bundle or a reply in</source>
            <translation>Ein Paket oder eine Antwort aufnehmen</translation>
        </message>
        <message>
            <source>Take away</source>
            <translation>Entfernen</translation>
        </message>
        <message>
            <source>Take in</source>
            <translation>Holen</translation>
        </message>
        <message>
            <source>Take the chosen work away</source>
            <translation>Die gewählte Aufgabe entfernen</translation>
        </message>
        <message>
            <source>Take the date away</source>
            <translation>Den Termin entfernen</translation>
        </message>
        <message>
            <source>Take the end back</source>
            <translation>Das Ende zurücknehmen</translation>
        </message>
        <message>
            <source>Take them away</source>
            <translation>Entfernen</translation>
        </message>
        <message>
            <source>Take up again</source>
            <translation>Wieder aufnehmen</translation>
        </message>
        <message>
            <source>Takes of the day</source>
            <translation>Aufnahmen des Tages</translation>
        </message>
        <message>
            <source>Takes of the rehearsal</source>
            <translation>Aufnahmen der Probe</translation>
        </message>
        <message>
            <source>Takes of today</source>
            <translation>Aufnahmen von heute</translation>
        </message>
        <message>
            <source>Takes; those with a tick become clips</source>
            <translation>Aufnahmen; die mit Haken werden Clips</translation>
        </message>
        <message>
            <source>Target tempo</source>
            <translation>Zieltempo</translation>
        </message>
        <message>
            <source>Tasks until</source>
            <translation>Aufgaben bis</translation>
        </message>
        <message>
            <source>Temperament</source>
            <translation>Stimmung</translation>
        </message>
        <message>
            <source>Tempo</source>
            <translation>Tempo</translation>
        </message>
        <message>
            <source>Tempo ladder</source>
            <translation>Tempoleiter</translation>
        </message>
        <message>
            <source>Tempo of the click</source>
            <translation>Tempo des Klicks</translation>
        </message>
        <message>
            <source>Tempo, beats per minute</source>
            <translation>Tempo, Schläge pro Minute</translation>
        </message>
        <message>
            <source>Tempo, beats per minute: A dashed, B solid</source>
            <translation>Tempo, Schläge pro Minute: A gestrichelt, B durchgezogen</translation>
        </message>
        <message>
            <source>Tempo: {tempo}</source>
            <translation>Tempo: {tempo}</translation>
        </message>
        <message>
            <source>Text</source>
            <translation>Text</translation>
        </message>
        <message>
            <source>Text (*.txt)</source>
            <translation>Text (*.txt)</translation>
        </message>
        <message>
            <source>That key has no name here; another one may work.</source>
            <translation>Diese Taste hat hier keinen Namen; vielleicht geht eine andere.</translation>
        </message>
        <message>
            <source>The chance was given back: {why}</source>
            <translation>Die Chance wurde zurückgegeben: {why}</translation>
        </message>
        <message>
            <source>The channel that the microphone is plugged into. The usual one is what the system gives: the first, or a mix of all.</source>
            <translation>Der Kanal, in dem das Mikrofon steckt. Der übliche ist, was das System gibt: der erste oder eine Mischung aus allen.</translation>
        </message>
        <message>
            <source>The chosen line is no item.</source>
            <translation>Die gewählte Zeile ist kein Punkt.</translation>
        </message>
        <message>
            <source>The click goes on after the count-in</source>
            <translation>Der Klick läuft nach dem Vorzählen weiter</translation>
        </message>
        <message>
            <source>The click's beats are kept with the take and anchor its tempo. The drone is tuned as the chosen passage is. Wear headphones, or the microphone hears both.</source>
            <translation>Die Schläge des Klicks bleiben bei der Aufnahme und verankern ihr Tempo. Der Bordun ist gestimmt wie die gewählte Stelle. Kopfhörer tragen, sonst hört das Mikrofon beides.</translation>
        </message>
        <message>
            <source>The delay of these devices is not measured: the click may lie some milliseconds beside its beats in the take.</source>
            <translation>Die Verzögerung dieser Geräte ist nicht gemessen: Der Klick kann in der Aufnahme einige Millisekunden neben seinen Schlägen liegen.</translation>
        </message>
        <message>
            <source>The device spoilt it</source>
            <translation>Das Gerät hat sie verdorben</translation>
        </message>
        <message>
            <source>The film itself (MP4)</source>
            <translation>Der Film selbst (MP4)</translation>
        </message>
        <message>
            <source>The first</source>
            <translation>Die erste</translation>
        </message>
        <message>
            <source>The first one sounds.</source>
            <translation>Die erste klingt.</translation>
        </message>
        <message>
            <source>The first {item_key_count} have the keys 1 to {item_key_count}: one key starts the clock on an item or switches to it. Every passage is on the list by itself. Double click or F2 renames.</source>
            <translation>Die ersten {item_key_count} haben die Tasten 1 bis {item_key_count}: Eine Taste startet die Uhr mit einem Punkt oder wechselt zu ihm. Jede Stelle steht von selbst auf der Liste. Doppelklick oder F2 benennt um.</translation>
        </message>
        <message>
            <source>The hours reach up to a day</source>
            <translation>Die Stunden reichen bis zu einem Tag</translation>
        </message>
        <message>
            <source>The input is closed.</source>
            <translation>Der Eingang ist geschlossen.</translation>
        </message>
        <message>
            <source>The input was too loud in places; turn it down for the next take.</source>
            <translation>Der Eingang war stellenweise zu laut; für die nächste Aufnahme leiser stellen.</translation>
        </message>
        <message>
            <source>The instrument sounded for {heard_min}.</source>
            <translation>Das Instrument klang {heard_min}.</translation>
        </message>
        <message>
            <source>The instrument was hardly heard; no minutes were added.</source>
            <translation>Das Instrument war kaum zu hören; es kamen keine Minuten dazu.</translation>
        </message>
        <message>
            <source>The keys 1 to {count} follow this order. Double click or F2 renames. Markers keep the word they were given, whatever becomes of the list.</source>
            <translation>Die Tasten 1 bis {count} folgen dieser Reihenfolge. Doppelklick oder F2 benennt um. Anmerkungen behalten ihr Wort, was auch aus der Liste wird.</translation>
        </message>
        <message>
            <source>The keys were kept.</source>
            <translation>Die Tasten wurden behalten.</translation>
        </message>
        <message>
            <source>The language holds from the next start of the program.</source>
            <translation>Die Sprache gilt ab dem nächsten Start des Programms.</translation>
        </message>
        <message>
            <source>The log is at {file}.</source>
            <translation>Das Protokoll liegt in {file}.</translation>
        </message>
        <message>
            <source>The log went to the terminal.</source>
            <translation>Das Protokoll ging an das Terminal.</translation>
        </message>
        <message>
            <source>The marker was deleted.</source>
            <translation>Die Anmerkung wurde gelöscht.</translation>
        </message>
        <message>
            <source>The minutes of {days}</source>
            <translation>Die Minuten von {days}</translation>
        </message>
        <message>
            <source>The names of days are kept.</source>
            <translation>Die Namen der Tage bleiben gespeichert.</translation>
        </message>
        <message>
            <source>The new rule holds from {day}; the days before keep theirs.</source>
            <translation>Die neue Regel gilt ab {day}; die Tage davor behalten ihre.</translation>
        </message>
        <message>
            <source>The next take as B, heard at the same place</source>
            <translation>Die nächste Aufnahme als B, an derselben Stelle gehört</translation>
        </message>
        <message>
            <source>The numbers are</source>
            <translation>Die Zahlen sind</translation>
        </message>
        <message>
            <source>The original file is copied as it is and kept, also where a take is only a part of it.</source>
            <translation>Die Originaldatei wird kopiert, wie sie ist, und bleibt erhalten, auch wo eine Aufnahme nur ein Teil davon ist.</translation>
        </message>
        <message>
            <source>The page</source>
            <translation>Die Seite</translation>
        </message>
        <message>
            <source>The passage, its bars, or its notes</source>
            <translation>Die Stelle, ihre Takte oder ihre Noten</translation>
        </message>
        <message>
            <source>The picture in the place of the lanes, or back</source>
            <translation>Das Bild statt der Spuren, oder zurück</translation>
        </message>
        <message>
            <source>The picture is kept too.</source>
            <translation>Auch das Bild bleibt erhalten.</translation>
        </message>
        <message>
            <source>The picture while it sounds</source>
            <translation>Das Bild, während es klingt</translation>
        </message>
        <message>
            <source>The practice clock is not running.</source>
            <translation>Die Übeuhr läuft nicht.</translation>
        </message>
        <message>
            <source>The practice day turns at</source>
            <translation>Der Übetag wechselt um</translation>
        </message>
        <message>
            <source>The printer did not take the page.</source>
            <translation>Der Drucker nahm die Seite nicht an.</translation>
        </message>
        <message>
            <source>The promise has a last day</source>
            <translation>Der Vorsatz hat einen letzten Tag</translation>
        </message>
        <message>
            <source>The promise is made: {name}.</source>
            <translation>Der Vorsatz ist gefasst: {name}.</translation>
        </message>
        <message>
            <source>The reason is on record; one more take is possible today.</source>
            <translation>Der Grund ist festgehalten; heute ist noch eine Aufnahme möglich.</translation>
        </message>
        <message>
            <source>The record begins with the first day.</source>
            <translation>Die Aufzeichnung beginnt mit dem ersten Tag.</translation>
        </message>
        <message>
            <source>The recording's file says nothing of place, device or dates.</source>
            <translation>Die Datei der Aufnahme sagt nichts über Ort, Gerät oder Datum.</translation>
        </message>
        <message>
            <source>The recordings and markers of the days shown in one file, for a teacher. Remarks and markers come back in a small reply.</source>
            <translation>Die Aufnahmen und Anmerkungen der gezeigten Tage in einer Datei, für eine Lehrkraft. Bemerkungen und Anmerkungen kommen in einer kleinen Antwort zurück.</translation>
        </message>
        <message>
            <source>The rehearsal is over; nothing was recorded in it.</source>
            <translation>Die Probe ist vorbei; darin wurde nichts aufgenommen.</translation>
        </message>
        <message>
            <source>The reply holds {markers}, {remarks} and {tasks}.</source>
            <translation>Die Antwort enthält {markers}, {remarks} und {tasks}.</translation>
        </message>
        <message>
            <source>The second</source>
            <translation>Die zweite</translation>
        </message>
        <message>
            <source>The second one sounds.</source>
            <translation>Die zweite klingt.</translation>
        </message>
        <message>
            <source>The settings were kept.</source>
            <translation>Die Einstellungen wurden behalten.</translation>
        </message>
        <message>
            <source>The seven days up to today</source>
            <translation>Die sieben Tage bis heute</translation>
        </message>
        <message>
            <source>The suggestion is a marker now.</source>
            <translation>Der Vorschlag ist jetzt eine Anmerkung.</translation>
        </message>
        <message>
            <source>The take before as B, heard at the same place</source>
            <translation>Die vorige Aufnahme als B, an derselben Stelle gehört</translation>
        </message>
        <message>
            <source>The take is being filed.</source>
            <translation>Die Aufnahme wird gerade abgelegt.</translation>
        </message>
        <message>
            <source>The take is being measured again.</source>
            <translation>Die Aufnahme wird neu gemessen.</translation>
        </message>
        <message>
            <source>The take is filed all the same.</source>
            <translation>Die Aufnahme ist trotzdem abgelegt.</translation>
        </message>
        <message>
            <source>The take was deleted; its recording is still there.</source>
            <translation>Die Aufnahme wurde gelöscht; ihre Tondatei ist noch da.</translation>
        </message>
        <message>
            <source>The text was copied.</source>
            <translation>Der Text wurde kopiert.</translation>
        </message>
        <message>
            <source>The title card</source>
            <translation>Die Titelkarte</translation>
        </message>
        <message>
            <source>The title says:</source>
            <translation>Der Titel lautet:</translation>
        </message>
        <message>
            <source>The year was saved: {file}.</source>
            <translation>Das Jahr wurde gespeichert: {file}.</translation>
        </message>
        <message>
            <source>The year was sent to the printer.</source>
            <translation>Das Jahr wurde an den Drucker geschickt.</translation>
        </message>
        <message>
            <source>The year, a bar a day</source>
            <translation>Das Jahr, ein Balken je Tag</translation>
        </message>
        <message>
            <source>Then and now</source>
            <translation>Damals und jetzt</translation>
        </message>
        <message>
            <source>There is no backup yet.</source>
            <translation>Es gibt noch keine Sicherung.</translation>
        </message>
        <message>
            <source>There is no item yet.</source>
            <translation>Es gibt noch keinen Punkt.</translation>
        </message>
        <message>
            <source>There is no item {at} yet.</source>
            <translation>Es gibt noch keinen Punkt {at}.</translation>
        </message>
        <message>
            <source>There is no passage yet. Make one first, then rehearse it.</source>
            <translation>Es gibt noch keine Stelle. Zuerst eine anlegen, dann proben.</translation>
        </message>
        <message>
            <source>There is no picture to save yet.</source>
            <translation>Es gibt noch kein Bild zum Speichern.</translation>
        </message>
        <message>
            <source>There is no rehearsal to listen to.</source>
            <translation>Es gibt keine Probe zum Anhören.</translation>
        </message>
        <message>
            <source>There is no take in these days.</source>
            <translation>In diesen Tagen gibt es keine Aufnahme.</translation>
        </message>
        <message>
            <source>There is no take of this passage today.</source>
            <translation>Von dieser Stelle gibt es heute keine Aufnahme.</translation>
        </message>
        <message>
            <source>There is nothing left in that direction.</source>
            <translation>In dieser Richtung ist nichts mehr übrig.</translation>
        </message>
        <message>
            <source>These takes belong to no passage.</source>
            <translation>Diese Aufnahmen gehören zu keiner Stelle.</translation>
        </message>
        <message>
            <source>These tasks are set for that day already.</source>
            <translation>Diese Aufgaben sind für den Tag schon gestellt.</translation>
        </message>
        <message>
            <source>This is somebody else's bundle.</source>
            <translation>Das ist das Paket von jemand anderem.</translation>
        </message>
        <message>
            <source>This is the first take.</source>
            <translation>Das ist die erste Aufnahme.</translation>
        </message>
        <message>
            <source>This is the latest take.</source>
            <translation>Das ist die neueste Aufnahme.</translation>
        </message>
        <message>
            <source>This is your own journal.</source>
            <translation>Das ist das eigene Journal.</translation>
        </message>
        <message>
            <source>This item is a passage.</source>
            <translation>Dieser Punkt ist eine Stelle.</translation>
        </message>
        <message>
            <source>This journal is your own: there is nobody to reply to.</source>
            <translation>Dieses Journal ist das eigene: Eine Antwort geht an niemanden.</translation>
        </message>
        <message>
            <source>This passage has had its one chance.</source>
            <translation>Diese Stelle hatte ihre eine Chance.</translation>
        </message>
        <message>
            <source>This take</source>
            <translation>Diese Aufnahme</translation>
        </message>
        <message>
            <source>This take has no picture.</source>
            <translation>Diese Aufnahme hat kein Bild.</translation>
        </message>
        <message>
            <source>This window</source>
            <translation>Dieses Fenster</translation>
        </message>
        <message>
            <source>Thu</source>
            <translation>Do</translation>
        </message>
        <message>
            <source>Tick the chosen line off, or take the tick away</source>
            <translation>Die gewählte Zeile abhaken, oder den Haken entfernen</translation>
        </message>
        <message>
            <source>Tick the chosen work off, or take the tick away</source>
            <translation>Die gewählte Aufgabe abhaken, oder den Haken entfernen</translation>
        </message>
        <message>
            <source>Time</source>
            <translation>Zeit</translation>
        </message>
        <message>
            <source>Time of day, as the practice clock knows it</source>
            <translation>Tageszeit, wie die Übeuhr sie kennt</translation>
        </message>
        <message>
            <source>Time of the reminder</source>
            <translation>Uhrzeit der Erinnerung</translation>
        </message>
        <message>
            <source>Time of this sitting</source>
            <translation>Zeit dieser Sitzung</translation>
        </message>
        <message>
            <source>Time recorded</source>
            <translation>Aufgenommene Zeit</translation>
        </message>
        <message>
            <source>Title card and sound (MP4)</source>
            <translation>Titelkarte und Klang (MP4)</translation>
        </message>
        <message>
            <source>Title card stands</source>
            <translation>Titelkarte steht</translation>
        </message>
        <message>
            <source>To</source>
            <translation>Bis</translation>
        </message>
        <message>
            <source>To the marker before</source>
            <translation>Zur vorigen Anmerkung</translation>
        </message>
        <message>
            <source>To the next marker</source>
            <translation>Zur nächsten Anmerkung</translation>
        </message>
        <message>
            <source>To the next marker that is not answered</source>
            <translation>Zur nächsten unbeantworteten Anmerkung</translation>
        </message>
        <message>
            <source>To the next note</source>
            <translation>Zur nächsten Note</translation>
        </message>
        <message>
            <source>To the next suggestion</source>
            <translation>Zum nächsten Vorschlag</translation>
        </message>
        <message>
            <source>To the next take, same passage</source>
            <translation>Zur nächsten Aufnahme derselben Stelle</translation>
        </message>
        <message>
            <source>To the note before</source>
            <translation>Zur vorigen Note</translation>
        </message>
        <message>
            <source>To the start</source>
            <translation>An den Anfang</translation>
        </message>
        <message>
            <source>To the suggestion before</source>
            <translation>Zum vorigen Vorschlag</translation>
        </message>
        <message>
            <source>To the take before, same passage</source>
            <translation>Zur vorigen Aufnahme derselben Stelle</translation>
        </message>
        <message>
            <source>To the trash</source>
            <translation>In den Papierkorb</translation>
        </message>
        <message>
            <source>To today</source>
            <translation>Zu heute</translation>
        </message>
        <message>
            <source>To work on</source>
            <translation>Zu bearbeiten</translation>
        </message>
        <message>
            <source>Today</source>
            <translation>Heute</translation>
        </message>
        <message>
            <source>Today's plan</source>
            <translation>Plan für heute</translation>
        </message>
        <message>
            <source>Tonic</source>
            <translation>Grundton</translation>
        </message>
        <message>
            <source>Tonic, as it sounds</source>
            <translation>Grundton, klingend</translation>
        </message>
        <message>
            <source>Trend of the passage</source>
            <translation>Verlauf der Stelle</translation>
        </message>
        <message>
            <source>Tue</source>
            <translation>Di</translation>
        </message>
        <message>
            <source>Two takes of one passage are needed</source>
            <translation>Zwei Aufnahmen einer Stelle sind nötig</translation>
        </message>
        <message>
            <source>Two takes of this passage in a drawn order, at one loudness; their dates stay hidden until you have answered, so that you judge the sound and not the day.</source>
            <translation>Zwei Aufnahmen dieser Stelle in ausgeloster Reihenfolge, bei gleicher Lautheit; ihre Daten bleiben bis zur Antwort verborgen, damit der Klang zählt und nicht der Tag.</translation>
        </message>
        <message>
            <source>Type one, such as 10.</source>
            <translation>Eine eintippen, etwa 10.</translation>
        </message>
        <message>
            <source>Type the minutes of the chosen day</source>
            <translation>Die Minuten des gewählten Tages eintippen</translation>
        </message>
        <message>
            <source>Type today's minutes</source>
            <translation>Die heutigen Minuten eintippen</translation>
        </message>
        <message>
            <source>Undo</source>
            <translation>Rückgängig</translation>
        </message>
        <message>
            <source>Undone</source>
            <translation>Rückgängig gemacht</translation>
        </message>
        <message>
            <source>Unevenness up to</source>
            <translation>Ungleichmäßigkeit bis</translation>
        </message>
        <message>
            <source>Until</source>
            <translation>Bis</translation>
        </message>
        <message>
            <source>Up</source>
            <translation>Auf</translation>
        </message>
        <message>
            <source>Up to, minutes a day</source>
            <translation>Bis zu, Minuten am Tag</translation>
        </message>
        <message>
            <source>Up: sharp. Down: flat. Row to row: 30 cents. Notes of the score.</source>
            <translation>Oben: zu hoch. Unten: zu tief. Von Zeile zu Zeile: 30 Cent. Noten, wie sie gedruckt sind.</translation>
        </message>
        <message>
            <source>Up: sharp. Down: flat. Row to row: 30 cents. Notes of {day}.</source>
            <translation>Oben: zu hoch. Unten: zu tief. Von Zeile zu Zeile: 30 Cent. Noten vom {day}.</translation>
        </message>
        <message>
            <source>Use it for the next takes</source>
            <translation>Für die nächsten Aufnahmen verwenden</translation>
        </message>
        <message>
            <source>Usual channel</source>
            <translation>Üblicher Kanal</translation>
        </message>
        <message>
            <source>Value</source>
            <translation>Wert</translation>
        </message>
        <message>
            <source>Volume</source>
            <translation>Lautstärke</translation>
        </message>
        <message>
            <source>Volume in percent</source>
            <translation>Lautstärke in Prozent</translation>
        </message>
        <message>
            <source>Volume of both</source>
            <translation>Lautstärke beider</translation>
        </message>
        <message>
            <source>Volume of click and drone</source>
            <translation>Lautstärke von Klick und Bordun</translation>
        </message>
        <message>
            <source>Wait</source>
            <translation>Warten</translation>
        </message>
        <message>
            <source>Wait, or cancel it.</source>
            <translation>Warten oder abbrechen.</translation>
        </message>
        <message>
            <source>Waiting for the first note</source>
            <translation>Wartet auf den ersten Ton</translation>
        </message>
        <message>
            <source>Waiting for your answer</source>
            <translation>Wartet auf die Antwort</translation>
        </message>
        <message>
            <source>Was the aim met? “{aim}”</source>
            <translation>Wurde das Ziel erreicht? „{aim}“</translation>
        </message>
        <message>
            <source>Watched folder</source>
            <translation>Überwachter Ordner</translation>
        </message>
        <message>
            <source>Wed</source>
            <translation>Mi</translation>
        </message>
        <message>
            <source>Week before</source>
            <translation>Vorige Woche</translation>
        </message>
        <message>
            <source>Week from {day}</source>
            <translation>Woche ab {day}</translation>
        </message>
        <message>
            <source>Week over week</source>
            <translation>Woche für Woche</translation>
        </message>
        <message>
            <source>Weekdays without a duty</source>
            <translation>Wochentage ohne Pflicht</translation>
        </message>
        <message>
            <source>Weight</source>
            <translation>Gewicht</translation>
        </message>
        <message>
            <source>What</source>
            <translation>Was</translation>
        </message>
        <message>
            <source>What came back</source>
            <translation>Was zurückkam</translation>
        </message>
        <message>
            <source>What is it, and what might help?</source>
            <translation>Was ist es, und was könnte helfen?</translation>
        </message>
        <message>
            <source>What is set for the lesson</source>
            <translation>Was für die Stunde aufgegeben ist</translation>
        </message>
        <message>
            <source>What is written</source>
            <translation>Was geschrieben steht</translation>
        </message>
        <message>
            <source>What is wrong with the key</source>
            <translation>Was an der Taste nicht geht</translation>
        </message>
        <message>
            <source>What it did, such as: the microphone was muted</source>
            <translation>Was es tat, etwa: Das Mikrofon war stumm</translation>
        </message>
        <message>
            <source>What it is called</source>
            <translation>Wie er heißt</translation>
        </message>
        <message>
            <source>What the device did</source>
            <translation>Was das Gerät tat</translation>
        </message>
        <message>
            <source>What the marks of the year mean</source>
            <translation>Was die Zeichen des Jahres bedeuten</translation>
        </message>
        <message>
            <source>What the record shows</source>
            <translation>Was die Aufzeichnung zeigt</translation>
        </message>
        <message>
            <source>What the record shows, or back to the year</source>
            <translation>Was die Aufzeichnung zeigt, oder zurück zum Jahr</translation>
        </message>
        <message>
            <source>What the report says</source>
            <translation>Was der Bericht sagt</translation>
        </message>
        <message>
            <source>What the teacher said</source>
            <translation>Was die Lehrkraft sagte</translation>
        </message>
        <message>
            <source>What was recorded until then is kept.</source>
            <translation>Was bis dahin aufgenommen wurde, bleibt erhalten.</translation>
        </message>
        <message>
            <source>What was set</source>
            <translation>Was aufgegeben wurde</translation>
        </message>
        <message>
            <source>What went along with what</source>
            <translation>Was womit einherging</translation>
        </message>
        <message>
            <source>What will happen</source>
            <translation>Was geschehen wird</translation>
        </message>
        <message>
            <source>What your answers say so far</source>
            <translation>Was die Antworten bisher sagen</translation>
        </message>
        <message>
            <source>Where the day comes from</source>
            <translation>Woher der Tag stammt</translation>
        </message>
        <message>
            <source>Which day was {name} played?</source>
            <translation>An welchem Tag wurde {name} gespielt?</translation>
        </message>
        <message>
            <source>Which day?</source>
            <translation>Welcher Tag?</translation>
        </message>
        <message>
            <source>Which days against which</source>
            <translation>Welche Tage gegen welche</translation>
        </message>
        <message>
            <source>Why</source>
            <translation>Warum</translation>
        </message>
        <message>
            <source>Will sound: {words}</source>
            <translation>Es wird klingen: {words}</translation>
        </message>
        <message>
            <source>With a score, wrong, missing and added notes are found, rhythm is held against the notation, and F sharp is told from G flat. A scale needs no file.</source>
            <translation>Mit Noten werden falsche, fehlende und zusätzliche Töne gefunden, der Rhythmus wird mit der Notation verglichen, und Fis wird von Ges unterschieden. Eine Tonleiter braucht keine Datei.</translation>
        </message>
        <message>
            <source>With headphones begin low, above all when you loop.</source>
            <translation>Mit Kopfhörern leise beginnen, vor allem in der Schleife.</translation>
        </message>
        <message>
            <source>With the picture of filmed takes</source>
            <translation>Mit dem Bild gefilmter Aufnahmen</translation>
        </message>
        <message>
            <source>Without an item</source>
            <translation>Ohne Punkt</translation>
        </message>
        <message>
            <source>Without your name and without the names of your folders</source>
            <translation>Ohne den eigenen Namen und die Namen der Ordner</translation>
        </message>
        <message>
            <source>Write</source>
            <translation>Schreiben</translation>
        </message>
        <message>
            <source>Write a bundle</source>
            <translation>Ein Paket schreiben</translation>
        </message>
        <message>
            <source>Write a bundle of these days</source>
            <translation>Ein Paket dieser Tage schreiben</translation>
        </message>
        <message>
            <source>Write both, then add it.</source>
            <translation>Beides schreiben, dann hinzufügen.</translation>
        </message>
        <message>
            <source>Write down</source>
            <translation>Aufschreiben</translation>
        </message>
        <message>
            <source>Write down what the teacher said</source>
            <translation>Aufschreiben, was die Lehrkraft sagte</translation>
        </message>
        <message>
            <source>Write for paper</source>
            <translation>Für Papier schreiben</translation>
        </message>
        <message>
            <source>Write page</source>
            <translation>Seite schreiben</translation>
        </message>
        <message>
            <source>Write the aim of the next take</source>
            <translation>Das Ziel der nächsten Aufnahme schreiben</translation>
        </message>
        <message>
            <source>Write the clip</source>
            <translation>Den Clip schreiben</translation>
        </message>
        <message>
            <source>Write the harmonics as they sound, such as A5 E6, or all.</source>
            <translation>Die Flageoletts schreiben, wie sie klingen, etwa A5 E6, oder all.</translation>
        </message>
        <message>
            <source>Write the open strings low to high with their octaves, such as C3 G3 D4 A4.</source>
            <translation>Die leeren Saiten von tief nach hoch mit ihren Oktaven schreiben, etwa C3 G3 D4 A4.</translation>
        </message>
        <message>
            <source>Write the page</source>
            <translation>Die Seite schreiben</translation>
        </message>
        <message>
            <source>Write the reply</source>
            <translation>Die Antwort schreiben</translation>
        </message>
        <message>
            <source>Write the reply to the bundle that is open</source>
            <translation>Die Antwort auf das offene Paket schreiben</translation>
        </message>
        <message>
            <source>Write the report as a page with clips to hear</source>
            <translation>Den Bericht als Seite mit Clips zum Hören schreiben</translation>
        </message>
        <message>
            <source>Write the report for paper</source>
            <translation>Den Bericht für Papier schreiben</translation>
        </message>
        <message>
            <source>Write the text of the chosen marker</source>
            <translation>Den Text der gewählten Anmerkung schreiben</translation>
        </message>
        <message>
            <source>Write {count}</source>
            <translation>{count} schreiben</translation>
        </message>
        <message>
            <source>Write, once all are looked at</source>
            <translation>Schreiben, sobald alle angesehen sind</translation>
        </message>
        <message>
            <source>Writing into {folder}</source>
            <translation>Geschrieben wird in {folder}</translation>
        </message>
        <message>
            <source>Writing the page, with the marked places to hear</source>
            <translation>Die Seite wird geschrieben, mit den angemerkten Orten zum Hören</translation>
        </message>
        <message>
            <source>Writing the report for paper</source>
            <translation>Der Bericht für Papier wird geschrieben</translation>
        </message>
        <message>
            <source>Writing {count}</source>
            <translation>Geschrieben wird: {count}</translation>
        </message>
        <message>
            <source>Writing {name}</source>
            <translation>{name} wird geschrieben</translation>
        </message>
        <message>
            <source>Written as</source>
            <translation>Geschrieben als</translation>
        </message>
        <message>
            <source>Wt.</source>
            <translation>Gew.</translation>
        </message>
        <message>
            <source>Year before</source>
            <translation>Voriges Jahr</translation>
        </message>
        <message>
            <source>Yes, go back to it</source>
            <translation>Ja, zu ihr zurückgehen</translation>
        </message>
        <message>
            <source>Yes, still there</source>
            <translation>Ja, noch da</translation>
        </message>
        <message>
            <source>Your own journal</source>
            <translation>Eigenes Journal</translation>
        </message>
        <message>
            <source>Zoom in</source>
            <translation>Vergrößern</translation>
        </message>
        <message>
            <source>Zoom out</source>
            <translation>Verkleinern</translation>
        </message>
        <message>
            <source>Zoom to the selection</source>
            <translation>Auf die Auswahl vergrößern</translation>
        </message>
        <message>
            <source>a clip shared</source>
            <translation>ein Clip geteilt</translation>
        </message>
        <message>
            <source>a clip was shared</source>
            <translation>ein Clip wurde geteilt</translation>
        </message>
        <message>
            <source>a journey</source>
            <translation>eine Reise</translation>
        </message>
        <message>
            <source>a promise pauses</source>
            <translation>ein Vorsatz ist unterbrochen</translation>
        </message>
        <message>
            <source>a take was made</source>
            <translation>eine Aufnahme wurde gemacht</translation>
        </message>
        <message>
            <source>all authors</source>
            <translation>alle</translation>
        </message>
        <message>
            <source>all categories</source>
            <translation>alle Kategorien</translation>
        </message>
        <message>
            <source>all states</source>
            <translation>jeder Stand</translation>
        </message>
        <message>
            <source>anything counts</source>
            <translation>alles zählt</translation>
        </message>
        <message>
            <source>at a steady tempo</source>
            <translation>in festem Tempo</translation>
        </message>
        <message>
            <source>begins later</source>
            <translation>beginnt später</translation>
        </message>
        <message>
            <source>being practised</source>
            <translation>wird geübt</translation>
        </message>
        <message>
            <source>broken off</source>
            <translation>abgebrochen</translation>
        </message>
        <message>
            <source>choose</source>
            <translation>wählen</translation>
        </message>
        <message>
            <source>click at {click_bpm} BPM</source>
            <translation>Klick bei {click_bpm} S/min</translation>
        </message>
        <message>
            <source>could not be measured</source>
            <translation>nicht messbar</translation>
        </message>
        <message>
            <source>day kept</source>
            <translation>Tag gehalten</translation>
        </message>
        <message>
            <source>day since the start</source>
            <translation>Tag seit Beginn</translation>
        </message>
        <message>
            <source>day {days} since the first entry</source>
            <translation>Tag {days} seit dem ersten Eintrag</translation>
        </message>
        <message>
            <source>day, month, year</source>
            <translation>Tag, Monat, Jahr</translation>
        </message>
        <message>
            <source>days kept</source>
            <translation>Tage gehalten</translation>
        </message>
        <message>
            <source>days practised</source>
            <translation>geübte Tage</translation>
        </message>
        <message>
            <source>days since first entry</source>
            <translation>Tage seit dem ersten Eintrag</translation>
        </message>
        <message>
            <source>done</source>
            <translation>erledigt</translation>
        </message>
        <message>
            <source>drone {drone}</source>
            <translation>Bordun {drone}</translation>
        </message>
        <message>
            <source>each its own</source>
            <translation>jede ihren eigenen</translation>
        </message>
        <message>
            <source>ended</source>
            <translation>beendet</translation>
        </message>
        <message>
            <source>entered late, filed under its own day</source>
            <translation>später eingetragen, unter dem eigenen Tag abgelegt</translation>
        </message>
        <message>
            <source>entered later</source>
            <translation>später eingetragen</translation>
        </message>
        <message>
            <source>first beat strong; or each from 0 to 1: 1 0.5 0.8 0.5</source>
            <translation>erster Schlag betont; oder jeder von 0 bis 1: 1 0.5 0.8 0.5</translation>
        </message>
        <message>
            <source>from the take</source>
            <translation>aus der Aufnahme</translation>
        </message>
        <message>
            <source>gone</source>
            <translation>weg</translation>
        </message>
        <message>
            <source>held since {day}</source>
            <translation>gehalten seit {day}</translation>
        </message>
        <message>
            <source>highest {hours} h</source>
            <translation>höchstens {hours} h</translation>
        </message>
        <message>
            <source>highest {minutes} min</source>
            <translation>höchstens {minutes} min</translation>
        </message>
        <message>
            <source>hours</source>
            <translation>Stunden</translation>
        </message>
        <message>
            <source>hours:minutes</source>
            <translation>Stunden:Minuten</translation>
        </message>
        <message>
            <source>in {days_left}</source>
            <translation>in {days_left}</translation>
        </message>
        <message>
            <source>inside</source>
            <translation>innerhalb</translation>
        </message>
        <message>
            <source>kept</source>
            <translation>gehalten</translation>
        </message>
        <message>
            <source>key {key}</source>
            <translation>Taste {key}</translation>
        </message>
        <message>
            <source>left out of the averages</source>
            <translation>in den Mittelwerten nicht enthalten</translation>
        </message>
        <message>
            <source>made {when}</source>
            <translation>gemacht {when}</translation>
        </message>
        <message>
            <source>measuring {round} %</source>
            <translation>Messung {round} %</translation>
        </message>
        <message>
            <source>minutes</source>
            <translation>Minuten</translation>
        </message>
        <message>
            <source>minutes of the day</source>
            <translation>Minuten des Tages</translation>
        </message>
        <message>
            <source>minutes of the day (the highest {top})</source>
            <translation>Minuten des Tages (am meisten {top})</translation>
        </message>
        <message>
            <source>minutes today</source>
            <translation>Minuten heute</translation>
        </message>
        <message>
            <source>minutes:seconds</source>
            <translation>Minuten:Sekunden</translation>
        </message>
        <message>
            <source>missed</source>
            <translation>versäumt</translation>
        </message>
        <message>
            <source>month, day, year</source>
            <translation>Monat, Tag, Jahr</translation>
        </message>
        <message>
            <source>more than {minutes} (the highest {top})</source>
            <translation>mehr als {minutes} (am meisten {top})</translation>
        </message>
        <message>
            <source>myself</source>
            <translation>ich selbst</translation>
        </message>
        <message>
            <source>never</source>
            <translation>nie</translation>
        </message>
        <message>
            <source>no passage</source>
            <translation>keine Stelle</translation>
        </message>
        <message>
            <source>no practice noted</source>
            <translation>kein Üben notiert</translation>
        </message>
        <message>
            <source>none</source>
            <translation>keiner</translation>
        </message>
        <message>
            <source>none asked</source>
            <translation>keine verlangt</translation>
        </message>
        <message>
            <source>none; or as they sound: A5 E6; or: all</source>
            <translation>keine; oder wie sie klingen: A5 E6; oder: all</translation>
        </message>
        <message>
            <source>none; such as A3, or D3 A3</source>
            <translation>keiner; etwa A3, oder D3 A3</translation>
        </message>
        <message>
            <source>none; where your phone's clips arrive</source>
            <translation>keiner; wo die Clips des Telefons ankommen</translation>
        </message>
        <message>
            <source>not measured</source>
            <translation>nicht gemessen</translation>
        </message>
        <message>
            <source>not over yet, left out</source>
            <translation>noch nicht vorbei, ausgelassen</translation>
        </message>
        <message>
            <source>not said</source>
            <translation>nicht genannt</translation>
        </message>
        <message>
            <source>not stated</source>
            <translation>nicht angegeben</translation>
        </message>
        <message>
            <source>not yet</source>
            <translation>noch nicht</translation>
        </message>
        <message>
            <source>nothing noted</source>
            <translation>nichts notiert</translation>
        </message>
        <message>
            <source>of {length}</source>
            <translation>von {length}</translation>
        </message>
        <message>
            <source>on a break: {promises}</source>
            <translation>unterbrochen: {promises}</translation>
        </message>
        <message>
            <source>on the beats of the take</source>
            <translation>auf den Schlägen der Aufnahme</translation>
        </message>
        <message>
            <source>one day so far</source>
            <translation>bisher ein Tag</translation>
        </message>
        <message>
            <source>open string</source>
            <translation>leere Saite</translation>
        </message>
        <message>
            <source>outside</source>
            <translation>außerhalb</translation>
        </message>
        <message>
            <source>planned rest</source>
            <translation>geplante Ruhe</translation>
        </message>
        <message>
            <source>press a key here</source>
            <translation>hier eine Taste drücken</translation>
        </message>
        <message>
            <source>reckoned at an hour a day</source>
            <translation>mit einer Stunde am Tag gerechnet</translation>
        </message>
        <message>
            <source>rest</source>
            <translation>Ruhe</translation>
        </message>
        <message>
            <source>rest marked afterwards</source>
            <translation>Ruhe, nachträglich vermerkt</translation>
        </message>
        <message>
            <source>rest taken</source>
            <translation>Ruhe genommen</translation>
        </message>
        <message>
            <source>rest, marked afterwards</source>
            <translation>Ruhe, nachträglich vermerkt</translation>
        </message>
        <message>
            <source>rest, planned</source>
            <translation>Ruhe, geplant</translation>
        </message>
        <message>
            <source>returned</source>
            <translation>zurückgekehrt</translation>
        </message>
        <message>
            <source>row {number}</source>
            <translation>Zeile {number}</translation>
        </message>
        <message>
            <source>running</source>
            <translation>läuft</translation>
        </message>
        <message>
            <source>settled</source>
            <translation>erledigt</translation>
        </message>
        <message>
            <source>short day</source>
            <translation>kurzer Tag</translation>
        </message>
        <message>
            <source>slope {slope}, scatter {scatter}</source>
            <translation>Steigung {slope}, Streuung {scatter}</translation>
        </message>
        <message>
            <source>stays at {minutes}, as in the journal</source>
            <translation>bleibt bei {minutes}, wie im Journal</translation>
        </message>
        <message>
            <source>still to keep</source>
            <translation>noch zu halten</translation>
        </message>
        <message>
            <source>take {number}</source>
            <translation>Aufnahme {number}</translation>
        </message>
        <message>
            <source>teacher</source>
            <translation>Lehrkraft</translation>
        </message>
        <message>
            <source>the whole passage; or 1-8, 17-24</source>
            <translation>die ganze Stelle; oder 1-8, 17-24</translation>
        </message>
        <message>
            <source>there</source>
            <translation>da</translation>
        </message>
        <message>
            <source>to</source>
            <translation>bis</translation>
        </message>
        <message>
            <source>to be measured</source>
            <translation>noch zu messen</translation>
        </message>
        <message>
            <source>to measure</source>
            <translation>zu messen</translation>
        </message>
        <message>
            <source>to measure again</source>
            <translation>neu zu messen</translation>
        </message>
        <message>
            <source>to work on</source>
            <translation>zu bearbeiten</translation>
        </message>
        <message>
            <source>today</source>
            <translation>heute</translation>
        </message>
        <message>
            <source>unclear</source>
            <translation>unklar</translation>
        </message>
        <message>
            <source>under 1 min</source>
            <translation>unter 1 min</translation>
        </message>
        <message>
            <source>until</source>
            <translation>bis</translation>
        </message>
        <message>
            <source>usual; or low to high: C3 G3 D4 A4</source>
            <translation>üblich; oder tief nach hoch: C3 G3 D4 A4</translation>
        </message>
        <message>
            <source>vibrato {numbers}</source>
            <translation>Vibrato {numbers}</translation>
        </message>
        <message>
            <source>vibrato {vibrato}</source>
            <translation>Vibrato {vibrato}</translation>
        </message>
        <message>
            <source>wait</source>
            <translation>warten</translation>
        </message>
        <message>
            <source>waiting</source>
            <translation>wartet</translation>
        </message>
        <message>
            <source>will be added</source>
            <translation>kommt dazu</translation>
        </message>
        <message>
            <source>words in it</source>
            <translation>Wörter darin</translation>
        </message>
        <message>
            <source>year, month, day</source>
            <translation>Jahr, Monat, Tag</translation>
        </message>
        <message>
            <source>{bpm} BPM</source>
            <translation>{bpm} S/min</translation>
        </message>
        <message>
            <source>{count_in_bars} counted in</source>
            <translation>{count_in_bars} vorgezählt</translation>
        </message>
        <message>
            <source>{count} have no day yet.</source>
            <translation>{count} haben noch keinen Tag.</translation>
        </message>
        <message>
            <source>{count} markers</source>
            <translation>{count} Anmerkungen</translation>
        </message>
        <message>
            <source>{count} more</source>
            <translation>{count} weitere</translation>
        </message>
        <message>
            <source>{count} of {all} markers</source>
            <translation>{count} von {all} Anmerkungen</translation>
        </message>
        <message>
            <source>{count} put aside</source>
            <translation>{count} beiseitegelegt</translation>
        </message>
        <message>
            <source>{count} set until {day}; the plan knows them.</source>
            <translation>{count} bis {day} gestellt; der Plan kennt sie.</translation>
        </message>
        <message>
            <source>{count} written. Nothing was sent anywhere.</source>
            <translation>{count} geschrieben. Nichts wurde irgendwohin gesendet.</translation>
        </message>
        <message>
            <source>{day}: the rehearsal is over. Now listen, one take after the other.</source>
            <translation>{day}: Die Probe ist vorbei. Jetzt anhören, eine Aufnahme nach der anderen.</translation>
        </message>
        <message>
            <source>{dropped_frames} samples lost</source>
            <translation>{dropped_frames} Abtastwerte verloren</translation>
        </message>
        <message>
            <source>{first} to {last}: {minutes} in the middle week</source>
            <translation>{first} bis {last}: {minutes} in der mittleren Woche</translation>
        </message>
        <message>
            <source>{hours} h</source>
            <translation>{hours} h</translation>
        </message>
        <message>
            <source>{key} already means: {words}. Choose another key.</source>
            <translation>{key} bedeutet schon: {words}. Eine andere Taste wählen.</translation>
        </message>
        <message>
            <source>{key} is needed to get about with the keyboard; choose another key.</source>
            <translation>{key} wird für die Bedienung mit der Tastatur gebraucht; eine andere Taste wählen.</translation>
        </message>
        <message>
            <source>{label}, {place}: {a} on {days_a} practice days from {a_from} to {a_to}; {b} on {days_b} practice days from {b_from} to {b_to}. Change {change}, ordinary scatter {scatter}: {word}.</source>
            <translation>{label}, {place}: {a} an {days_a} Übetagen von {a_from} bis {a_to}; {b} an {days_b} Übetagen von {b_from} bis {b_to}. Änderung {change}, übliche Streuung {scatter}: {word}.</translation>
        </message>
        <message>
            <source>{label}: A {a}, B {b}, change {change}: {word}</source>
            <translation>{label}: A {a}, B {b}, Änderung {change}: {word}</translation>
        </message>
        <message>
            <source>{lane} lower</source>
            <translation>{lane} niedriger</translation>
        </message>
        <message>
            <source>{lane} taller</source>
            <translation>{lane} höher</translation>
        </message>
        <message>
            <source>{length} long.</source>
            <translation>Dauer {length}.</translation>
        </message>
        <message>
            <source>{length}, kept whole</source>
            <translation>{length}, ganz behalten</translation>
        </message>
        <message>
            <source>{length}, trimmed to {kept}</source>
            <translation>{length}, gekürzt auf {kept}</translation>
        </message>
        <message>
            <source>{lost} lost while recording.</source>
            <translation>{lost} beim Aufnehmen verloren.</translation>
        </message>
        <message>
            <source>{minutes} today</source>
            <translation>{minutes} heute</translation>
        </message>
        <message>
            <source>{minutes} would be added to the day.</source>
            <translation>{minutes} kämen zum Tag dazu.</translation>
        </message>
        <message>
            <source>{ms} ms</source>
            <translation>{ms} ms</translation>
        </message>
        <message>
            <source>{ms} ms, the usual</source>
            <translation>{ms} ms, üblich</translation>
        </message>
        <message>
            <source>{name} added</source>
            <translation>{name} zusätzlich</translation>
        </message>
        <message>
            <source>{name} at {a_start_s}: A {a_deviation}, B {b_deviation}, change {change}</source>
            <translation>{name} bei {a_start_s}: A {a_deviation}, B {b_deviation}, Änderung {change}</translation>
        </message>
        <message>
            <source>{name} at {start_s}</source>
            <translation>{name} bei {start_s}</translation>
        </message>
        <message>
            <source>{name} could not be written.</source>
            <translation>{name} konnte nicht geschrieben werden.</translation>
        </message>
        <message>
            <source>{name} holds {count}.</source>
            <translation>{name} enthält {count}.</translation>
        </message>
        <message>
            <source>{name} is not offered again; the file stays where it is.</source>
            <translation>{name} wird nicht wieder angeboten; die Datei bleibt, wo sie ist.</translation>
        </message>
        <message>
            <source>{name} left out</source>
            <translation>{name} ausgelassen</translation>
        </message>
        <message>
            <source>{name} open</source>
            <translation>{name} leer</translation>
        </message>
        <message>
            <source>{name} was written.</source>
            <translation>{name} wurde geschrieben.</translation>
        </message>
        <message>
            <source>{name} wrong</source>
            <translation>{name} falsch</translation>
        </message>
        <message>
            <source>{name}, up to {minutes}</source>
            <translation>{name}, bis {minutes}</translation>
        </message>
        <message>
            <source>{name}{closed} – Passagework</source>
            <translation>{name}{closed} – Passagework</translation>
        </message>
        <message>
            <source>{now}; {minutes} sounded</source>
            <translation>{now}; {minutes} klangen</translation>
        </message>
        <message>
            <source>{number} of {count}</source>
            <translation>{number} von {count}</translation>
        </message>
        <message>
            <source>{offers} in the watched folder</source>
            <translation>{offers} im überwachten Ordner</translation>
        </message>
        <message>
            <source>{order}: '{text}' would be {day}.</source>
            <translation>{order}: „{text}“ wäre {day}.</translation>
        </message>
        <message>
            <source>{passage_name}, take {number}</source>
            <translation>{passage_name}, Aufnahme {number}</translation>
        </message>
        <message>
            <source>{passage_name}, {practice_day}, take {take_number}, at {start_s}{near}</source>
            <translation>{passage_name}, {practice_day}, Aufnahme {take_number}, bei {start_s}{near}</translation>
        </message>
        <message>
            <source>{passage}, take {number}</source>
            <translation>{passage}, Aufnahme {number}</translation>
        </message>
        <message>
            <source>{placed} Measured: then {then}, now {now}: {word}.</source>
            <translation>{placed} Gemessen: damals {then}, jetzt {now}: {word}.</translation>
        </message>
        <message>
            <source>{place}: heard and measured. {heard}; {measured}.</source>
            <translation>{place}: gehört und gemessen. {heard}; {measured}.</translation>
        </message>
        <message>
            <source>{place}: marked by ear. Nothing of the kind was measured there. {heard}.</source>
            <translation>{place}: nach Gehör angemerkt. Dort wurde nichts dergleichen gemessen. {heard}.</translation>
        </message>
        <message>
            <source>{place}: measured, not marked. {measured}.</source>
            <translation>{place}: gemessen, nicht angemerkt. {measured}.</translation>
        </message>
        <message>
            <source>{practice_day}, take {number}{markers}</source>
            <translation>{practice_day}, Aufnahme {number}{markers}</translation>
        </message>
        <message>
            <source>{rows} filed under {days}.</source>
            <translation>{rows} unter {days} abgelegt.</translation>
        </message>
        <message>
            <source>{scale} goes beyond the {instrument}: choose fewer octaves.</source>
            <translation>{scale} geht über {instrument} hinaus: weniger Oktaven wählen.</translation>
        </message>
        <message>
            <source>{span}: {minutes} on {days}</source>
            <translation>{span}: {minutes} an {days}</translation>
        </message>
        <message>
            <source>{span}: {rule}.</source>
            <translation>{span}: {rule}.</translation>
        </message>
        <message>
            <source>{time}{until}: {category}, weight {weight}, {state}, by {author}. {text}</source>
            <translation>{time}{until}: {category}, Gewicht {weight}, {state}, von {author}. {text}</translation>
        </message>
        <message>
            <source>{today_min} today</source>
            <translation>{today_min} heute</translation>
        </message>
        <message>
            <source>{value} cents</source>
            <translation>{value} Cent</translation>
        </message>
        <message>
            <source>{weekday}: {minutes} on average, practised on {practised} of {days}</source>
            <translation>{weekday}: {minutes} im Mittel, geübt an {practised} von {days}</translation>
        </message>
        <message>
            <source>{words} the practice clock</source>
            <translation>Übeuhr: {words}</translation>
        </message>
        <message>
            <source>{word}{clipped}, peak {hold} dBFS</source>
            <translation>{word}{clipped}, Spitze {hold} dBFS</translation>
        </message>
    </context>
    <context>
        <name>said</name>
        <message>
            <source>1 bar</source>
            <translation>1 Takt</translation>
        </message>
        <message>
            <source>1 day</source>
            <translation>1 Tag</translation>
        </message>
        <message>
            <source>1 file</source>
            <translation>1 Datei</translation>
        </message>
        <message>
            <source>1 mark</source>
            <translation>1 Markierung</translation>
        </message>
        <message>
            <source>1 marker</source>
            <translation>1 Anmerkung</translation>
        </message>
        <message>
            <source>1 new clip</source>
            <translation>1 neuer Clip</translation>
        </message>
        <message>
            <source>1 note</source>
            <translation>1 Note</translation>
        </message>
        <message>
            <source>1 practice day</source>
            <translation>1 Übetag</translation>
        </message>
        <message>
            <source>1 recording</source>
            <translation>1 Aufnahme</translation>
        </message>
        <message>
            <source>1 take</source>
            <translation>1 Aufnahme</translation>
        </message>
        <message>
            <source>1 week</source>
            <translation>1 Woche</translation>
        </message>
        <message>
            <source>A against 440 Hz</source>
            <translation>A gegen 440 Hz</translation>
        </message>
        <message>
            <source>A from the take</source>
            <translation>A aus der Aufnahme</translation>
        </message>
        <message>
            <source>A in use</source>
            <translation>Verwendetes A</translation>
        </message>
        <message>
            <source>A plan is a proposal, never a duty.</source>
            <translation>Ein Plan ist ein Vorschlag, nie eine Pflicht.</translation>
        </message>
        <message>
            <source>A recording runs already.</source>
            <translation>Es läuft schon eine Aufnahme.</translation>
        </message>
        <message>
            <source>A sound device hangs, probably because it was pulled out.</source>
            <translation>Ein Tongerät hängt, wahrscheinlich weil es abgezogen wurde.</translation>
        </message>
        <message>
            <source>Another channel of the input: {before}, then {now}.</source>
            <translation>Ein anderer Kanal des Eingangs: {before}, dann {now}.</translation>
        </message>
        <message>
            <source>Another input: {before}, then {now}.</source>
            <translation>Ein anderer Eingang: {before}, dann {now}.</translation>
        </message>
        <message>
            <source>Another tempo: {a} and {b} BPM.</source>
            <translation>Ein anderes Tempo: {a} und {b} S/min.</translation>
        </message>
        <message>
            <source>Apr</source>
            <translation>Apr</translation>
        </message>
        <message>
            <source>Aug</source>
            <translation>Aug</translation>
        </message>
        <message>
            <source>Check that the input is plugged in and not muted, then record again.</source>
            <translation>Prüfen, dass der Eingang angeschlossen und nicht stumm ist, dann neu aufnehmen.</translation>
        </message>
        <message>
            <source>Check the disk.</source>
            <translation>Die Platte prüfen.</translation>
        </message>
        <message>
            <source>Check the folder's permissions, or choose another folder.</source>
            <translation>Die Rechte des Ordners prüfen oder einen anderen wählen.</translation>
        </message>
        <message>
            <source>Check the folder.</source>
            <translation>Den Ordner prüfen.</translation>
        </message>
        <message>
            <source>Check the input, then try again.</source>
            <translation>Den Eingang prüfen, dann neu versuchen.</translation>
        </message>
        <message>
            <source>Choose a WAV, FLAC, OGG, MP3, M4A, MP4 or MOV file.</source>
            <translation>Eine WAV-, FLAC-, OGG-, MP3-, M4A-, MP4- oder MOV-Datei wählen.</translation>
        </message>
        <message>
            <source>Click and drone in headphones are easily too loud: start low, and rest your ears.</source>
            <translation>Klick und Bordun sind im Kopfhörer leicht zu laut: leise beginnen und den Ohren Ruhe gönnen.</translation>
        </message>
        <message>
            <source>Clipped samples</source>
            <translation>Übersteuerte Abtastwerte</translation>
        </message>
        <message>
            <source>Close other programs that use it, or choose another input.</source>
            <translation>Andere Programme schließen, die ihn benutzen, oder einen anderen Eingang wählen.</translation>
        </message>
        <message>
            <source>Close other programs that use it, or choose another output.</source>
            <translation>Andere Programme schließen, die ihn benutzen, oder einen anderen Ausgang wählen.</translation>
        </message>
        <message>
            <source>Close the program and start it again; everything recorded so far is kept.</source>
            <translation>Das Programm schließen und neu starten; alles bisher Aufgenommene bleibt erhalten.</translation>
        </message>
        <message>
            <source>Dec</source>
            <translation>Dez</translation>
        </message>
        <message>
            <source>Drift of the pitch</source>
            <translation>Drift der Tonhöhe</translation>
        </message>
        <message>
            <source>Dynamic span</source>
            <translation>Dynamikumfang</translation>
        </message>
        <message>
            <source>Dynamic span {value}</source>
            <translation>Dynamikumfang {value}</translation>
        </message>
        <message>
            <source>Feb</source>
            <translation>Feb</translation>
        </message>
        <message>
            <source>First against latest</source>
            <translation>Erste gegen neueste</translation>
        </message>
        <message>
            <source>Frames lost while recording: {dropped_frames}.</source>
            <translation>Beim Aufnehmen verlorene Abtastwerte: {dropped_frames}.</translation>
        </message>
        <message>
            <source>Fri {rest}</source>
            <translation>Fr {rest}</translation>
        </message>
        <message>
            <source>From soft to loud while playing (10th to 95th percentile of momentary loudness).</source>
            <translation>Von leise bis laut beim Spielen (10. bis 95. Perzentil der momentanen Lautheit).</translation>
        </message>
        <message>
            <source>Heard at one loudness: {parts}.</source>
            <translation>Bei gleicher Lautheit gehört: {parts}.</translation>
        </message>
        <message>
            <source>Hidden until you have marked what you hear.</source>
            <translation>Verborgen, bis angemerkt ist, was zu hören ist.</translation>
        </message>
        <message>
            <source>Highest peak; 0 is full scale.</source>
            <translation>Höchste Spitze; 0 ist Vollaussteuerung.</translation>
        </message>
        <message>
            <source>How far the notes lie from their targets on average, whichever way.</source>
            <translation>Wie weit die Noten im Mittel von ihren Zieltönen liegen, gleich in welche Richtung.</translation>
        </message>
        <message>
            <source>Jan</source>
            <translation>Jan</translation>
        </message>
        <message>
            <source>Jul</source>
            <translation>Juli</translation>
        </message>
        <message>
            <source>Jun</source>
            <translation>Juni</translation>
        </message>
        <message>
            <source>Least unevenness seen</source>
            <translation>Kleinste sichtbare Ungleichmäßigkeit</translation>
        </message>
        <message>
            <source>Level of the quietest parts.</source>
            <translation>Pegel der leisesten Teile.</translation>
        </message>
        <message>
            <source>Listen to it instead.</source>
            <translation>Stattdessen anhören.</translation>
        </message>
        <message>
            <source>Loudest 0.4 seconds.</source>
            <translation>Lauteste 0,4 Sekunden.</translation>
        </message>
        <message>
            <source>Loudest moment</source>
            <translation>Lautester Moment</translation>
        </message>
        <message>
            <source>Loudness against the take</source>
            <translation>Lautheit gegenüber der Aufnahme</translation>
        </message>
        <message>
            <source>Make room on the disk and record again.</source>
            <translation>Platz auf der Platte schaffen und neu aufnehmen.</translation>
        </message>
        <message>
            <source>Make room on the disk, then try again.</source>
            <translation>Platz auf der Platte schaffen, dann neu versuchen.</translation>
        </message>
        <message>
            <source>Mar</source>
            <translation>März</translation>
        </message>
        <message>
            <source>May</source>
            <translation>Mai</translation>
        </message>
        <message>
            <source>Mean absolute deviation</source>
            <translation>Mittlere absolute Abweichung</translation>
        </message>
        <message>
            <source>Mean deviation</source>
            <translation>Mittlere Abweichung</translation>
        </message>
        <message>
            <source>Mean deviation {value}</source>
            <translation>Mittlere Abweichung {value}</translation>
        </message>
        <message>
            <source>Mean tempo of the take.</source>
            <translation>Mittleres Tempo der Aufnahme.</translation>
        </message>
        <message>
            <source>Measure it first.</source>
            <translation>Zuerst messen.</translation>
        </message>
        <message>
            <source>Mon {rest}</source>
            <translation>Mo {rest}</translation>
        </message>
        <message>
            <source>No beat found here.</source>
            <translation>Hier wurde kein Schlag gefunden.</translation>
        </message>
        <message>
            <source>No loudspeaker, headphones or other sound output was found.</source>
            <translation>Kein Lautsprecher, Kopfhörer oder anderer Tonausgang gefunden.</translation>
        </message>
        <message>
            <source>No microphone or other sound input was found.</source>
            <translation>Kein Mikrofon und kein anderer Toneingang gefunden.</translation>
        </message>
        <message>
            <source>No notes were found in this take.</source>
            <translation>In dieser Aufnahme wurden keine Noten gefunden.</translation>
        </message>
        <message>
            <source>No single pitch sounds here.</source>
            <translation>Hier klingt keine einzelne Tonhöhe.</translation>
        </message>
        <message>
            <source>Noise floor</source>
            <translation>Grundrauschen</translation>
        </message>
        <message>
            <source>Not measured there.</source>
            <translation>Dort nicht gemessen.</translation>
        </message>
        <message>
            <source>Not measured yet.</source>
            <translation>Noch nicht gemessen.</translation>
        </message>
        <message>
            <source>Notes measured</source>
            <translation>Gemessene Noten</translation>
        </message>
        <message>
            <source>Nothing asks for attention today: play what you like, or mark what to work on while listening to a take.</source>
            <translation>Heute drängt nichts: frei spielen oder beim Anhören anmerken, woran zu arbeiten ist.</translation>
        </message>
        <message>
            <source>Nothing is being recorded.</source>
            <translation>Es wird nichts aufgenommen.</translation>
        </message>
        <message>
            <source>Nothing is loud enough.</source>
            <translation>Nichts ist laut genug.</translation>
        </message>
        <message>
            <source>Nothing sounds here.</source>
            <translation>Hier klingt nichts.</translation>
        </message>
        <message>
            <source>Nothing was recorded: no sound arrived from the input.</source>
            <translation>Nichts wurde aufgenommen: Vom Eingang kam kein Klang.</translation>
        </message>
        <message>
            <source>Nov</source>
            <translation>Nov</translation>
        </message>
        <message>
            <source>Oct</source>
            <translation>Okt</translation>
        </message>
        <message>
            <source>Of the whole take, relative to full scale; not a sound pressure level.</source>
            <translation>Der ganzen Aufnahme, bezogen auf Vollaussteuerung; kein Schalldruckpegel.</translation>
        </message>
        <message>
            <source>Open it to write.</source>
            <translation>Zum Schreiben öffnen.</translation>
        </message>
        <message>
            <source>Open your own journal to practise.</source>
            <translation>Zum Üben das eigene Journal öffnen.</translation>
        </message>
        <message>
            <source>Open {string} string</source>
            <translation>Leere {string}-Saite</translation>
        </message>
        <message>
            <source>Outside every plausible target.</source>
            <translation>Außerhalb jedes möglichen Zieltons.</translation>
        </message>
        <message>
            <source>Overdriven: {clipped_samples} at full scale.</source>
            <translation>Übersteuert: {clipped_samples} an der Vollaussteuerung.</translation>
        </message>
        <message>
            <source>Please note</source>
            <translation>Zu beachten</translation>
        </message>
        <message>
            <source>Plug in a microphone or sound card; if one is plugged in, check that the sound server runs and that libasound2-plugins is installed, then scan again.</source>
            <translation>Ein Mikrofon oder eine Soundkarte anschließen; ist etwas angeschlossen, prüfen, dass der Tonserver läuft und libasound2-plugins installiert ist, dann neu suchen.</translation>
        </message>
        <message>
            <source>Plug in headphones or loudspeakers, then scan again.</source>
            <translation>Kopfhörer oder Lautsprecher anschließen, dann neu suchen.</translation>
        </message>
        <message>
            <source>Plug it in again and choose it.</source>
            <translation>Wieder anschließen und auswählen.</translation>
        </message>
        <message>
            <source>Plug it in again, or choose another output.</source>
            <translation>Wieder anschließen oder einen anderen Ausgang wählen.</translation>
        </message>
        <message>
            <source>Plug it in and scan again, or choose another device.</source>
            <translation>Anschließen und neu suchen oder ein anderes Gerät wählen.</translation>
        </message>
        <message>
            <source>Plus: it gets faster; minus: slower.</source>
            <translation>Plus: es wird schneller; minus: langsamer.</translation>
        </message>
        <message>
            <source>Plus: the take goes sharp from its start to its end; minus: flat.</source>
            <translation>Plus: Die Aufnahme steigt vom Anfang zum Ende; minus: sie sinkt.</translation>
        </message>
        <message>
            <source>Recording and playing need the PortAudio library, which was not found.</source>
            <translation>Aufnehmen und Abspielen brauchen die PortAudio-Bibliothek; sie wurde nicht gefunden.</translation>
        </message>
        <message>
            <source>Running notes</source>
            <translation>Laufende Noten</translation>
        </message>
        <message>
            <source>Sat {rest}</source>
            <translation>Sa {rest}</translation>
        </message>
        <message>
            <source>Sep</source>
            <translation>Sept</translation>
        </message>
        <message>
            <source>Share of the measured notes.</source>
            <translation>Anteil der gemessenen Noten.</translation>
        </message>
        <message>
            <source>Share of the notes that entered these numbers.</source>
            <translation>Anteil der Noten, die in diese Zahlen eingingen.</translation>
        </message>
        <message>
            <source>Share of the sounding time that entered these numbers.</source>
            <translation>Anteil der klingenden Zeit, der in diese Zahlen einging.</translation>
        </message>
        <message>
            <source>Spread {value}</source>
            <translation>Streuung {value}</translation>
        </message>
        <message>
            <source>Standard deviation of the notes around their own mean.</source>
            <translation>Standardabweichung der Noten um ihr eigenes Mittel.</translation>
        </message>
        <message>
            <source>Start it first.</source>
            <translation>Zuerst starten.</translation>
        </message>
        <message>
            <source>Stop it first.</source>
            <translation>Zuerst beenden.</translation>
        </message>
        <message>
            <source>Stop the recording or the level first.</source>
            <translation>Zuerst die Aufnahme oder die Pegelprüfung beenden.</translation>
        </message>
        <message>
            <source>Sun {rest}</source>
            <translation>So {rest}</translation>
        </message>
        <message>
            <source>Take {name} was made without retakes.</source>
            <translation>Aufnahme {name} entstand ohne zweiten Versuch.</translation>
        </message>
        <message>
            <source>Tendency {value}</source>
            <translation>Tendenz {value}</translation>
        </message>
        <message>
            <source>The A was estimated from this take, so it shows no general offset.</source>
            <translation>Das A wurde aus dieser Aufnahme geschätzt; ein allgemeiner Versatz zeigt sich darum nicht.</translation>
        </message>
        <message>
            <source>The A4 the notes were held against.</source>
            <translation>Das A4, an dem die Noten gemessen wurden.</translation>
        </message>
        <message>
            <source>The clock is not running.</source>
            <translation>Die Uhr läuft nicht.</translation>
        </message>
        <message>
            <source>The computer or the program was put to sleep; the take up to then is kept.</source>
            <translation>Rechner oder Programm wurden schlafen gelegt; die Aufnahme bis dahin bleibt erhalten.</translation>
        </message>
        <message>
            <source>The device '{key}' is not there any more.</source>
            <translation>Das Gerät „{key}“ ist nicht mehr da.</translation>
        </message>
        <message>
            <source>The disk is full: {doing}.</source>
            <translation>Die Platte ist voll: {doing}.</translation>
        </message>
        <message>
            <source>The disk is full; the take up to then is kept.</source>
            <translation>Die Platte ist voll; die Aufnahme bis dahin bleibt erhalten.</translation>
        </message>
        <message>
            <source>The folder of the take went away; the take up to then is kept.</source>
            <translation>Der Ordner der Aufnahme verschwand; die Aufnahme bis dahin bleibt erhalten.</translation>
        </message>
        <message>
            <source>The input '{name}' has no channel {number} any more; its first channel is recorded.</source>
            <translation>Der Eingang '{name}' hat den Kanal {number} nicht mehr; aufgenommen wird sein erster Kanal.</translation>
        </message>
        <message>
            <source>The output '{name}' would not open ({error}).</source>
            <translation>Der Ausgang „{name}“ ließ sich nicht öffnen ({error}).</translation>
        </message>
        <message>
            <source>The program ended while recording; the take up to then is kept.</source>
            <translation>Das Programm endete während der Aufnahme; was bis dahin klang, bleibt erhalten.</translation>
        </message>
        <message>
            <source>The recording is overdriven.</source>
            <translation>Die Aufnahme ist übersteuert.</translation>
        </message>
        <message>
            <source>The signed mean: plus is sharp, minus is flat.</source>
            <translation>Das Mittel mit Vorzeichen: plus ist zu hoch, minus zu tief.</translation>
        </message>
        <message>
            <source>The sound input has gone.</source>
            <translation>Der Toneingang ist verschwunden.</translation>
        </message>
        <message>
            <source>The sound input is in use.</source>
            <translation>Der Toneingang ist in Gebrauch.</translation>
        </message>
        <message>
            <source>The sound input went away; the take up to then is kept.</source>
            <translation>Der Toneingang verschwand; die Aufnahme bis dahin bleibt erhalten.</translation>
        </message>
        <message>
            <source>The sound output has gone.</source>
            <translation>Der Tonausgang ist verschwunden.</translation>
        </message>
        <message>
            <source>The sound system would not start.</source>
            <translation>Das Tonsystem startete nicht.</translation>
        </message>
        <message>
            <source>The take is too short for it.</source>
            <translation>Die Aufnahme ist dafür zu kurz.</translation>
        </message>
        <message>
            <source>There is no passage '{text}'.</source>
            <translation>Es gibt keine Stelle „{text}“.</translation>
        </message>
        <message>
            <source>There is still time to play today, if you like; a few minutes count too.</source>
            <translation>Heute ist noch Zeit zu spielen, wenn Lust da ist; auch ein paar Minuten zählen.</translation>
        </message>
        <message>
            <source>This is a bundle of somebody's days: nothing is recorded, imported or counted in it.</source>
            <translation>Das ist ein Paket mit Tagen von jemandem: Darin wird nichts aufgenommen, importiert oder gezählt.</translation>
        </message>
        <message>
            <source>This journal is open for looking only.</source>
            <translation>Dieses Journal ist nur zum Ansehen geöffnet.</translation>
        </message>
        <message>
            <source>This take could not be measured.</source>
            <translation>Diese Aufnahme konnte nicht gemessen werden.</translation>
        </message>
        <message>
            <source>This take has no such number.</source>
            <translation>Diese Aufnahme hat keine solche Zahl.</translation>
        </message>
        <message>
            <source>This take is not measured yet.</source>
            <translation>Diese Aufnahme ist noch nicht gemessen.</translation>
        </message>
        <message>
            <source>Thu {rest}</source>
            <translation>Do {rest}</translation>
        </message>
        <message>
            <source>Time measured</source>
            <translation>Gemessene Zeit</translation>
        </message>
        <message>
            <source>Today's take of '{passage}' was made at {at} and stands as it is: this passage has one take a day.</source>
            <translation>Die heutige Aufnahme von „{passage}“ entstand um {at} und bleibt, wie sie ist: Diese Stelle hat eine Aufnahme am Tag.</translation>
        </message>
        <message>
            <source>Too few notes were measured.</source>
            <translation>Zu wenige Noten wurden gemessen.</translation>
        </message>
        <message>
            <source>Tue {rest}</source>
            <translation>Di {rest}</translation>
        </message>
        <message>
            <source>Unevenness {value}</source>
            <translation>Ungleichmäßigkeit {value}</translation>
        </message>
        <message>
            <source>Until now, {at}</source>
            <translation>Bis jetzt, {at}</translation>
        </message>
        <message>
            <source>Variation of the beat lengths; less is steadier.</source>
            <translation>Schwankung der Schlaglängen; weniger ist gleichmäßiger.</translation>
        </message>
        <message>
            <source>Warm up first, and stop where it hurts.</source>
            <translation>Zuerst einspielen, und aufhören, wo es wehtut.</translation>
        </message>
        <message>
            <source>Warm up first, and stop where it hurts. A plan is a proposal, never a duty.</source>
            <translation>Zuerst einspielen, und aufhören, wo es wehtut. Ein Plan ist ein Vorschlag, nie eine Pflicht.</translation>
        </message>
        <message>
            <source>Wed {rest}</source>
            <translation>Mi {rest}</translation>
        </message>
        <message>
            <source>Which is better in tune?</source>
            <translation>Welche ist sauberer?</translation>
        </message>
        <message>
            <source>Which is more musical?</source>
            <translation>Welche ist musikalischer?</translation>
        </message>
        <message>
            <source>Which is steadier?</source>
            <translation>Welche ist gleichmäßiger?</translation>
        </message>
        <message>
            <source>Within 10 cents</source>
            <translation>Innerhalb 10 Cent</translation>
        </message>
        <message>
            <source>Within 10 cents {value}</source>
            <translation>Innerhalb 10 Cent {value}</translation>
        </message>
        <message>
            <source>Within 25 cents</source>
            <translation>Innerhalb 25 Cent</translation>
        </message>
        <message>
            <source>assigned: {minutes_done} of {minutes} min done</source>
            <translation>aufgegeben: {minutes_done} von {minutes} min getan</translation>
        </message>
        <message>
            <source>better</source>
            <translation>besser</translation>
        </message>
        <message>
            <source>better {value}</source>
            <translation>besser {value}</translation>
        </message>
        <message>
            <source>channel {number}</source>
            <translation>Kanal {number}</translation>
        </message>
        <message>
            <source>ensemble</source>
            <translation>Ensemble</translation>
        </message>
        <message>
            <source>faster</source>
            <translation>schneller</translation>
        </message>
        <message>
            <source>in tune by every plausible target</source>
            <translation>sauber nach jedem möglichen Zielton</translation>
        </message>
        <message>
            <source>in {days} days</source>
            <translation>in {days} Tagen</translation>
        </message>
        <message>
            <source>it depends on the target</source>
            <translation>es hängt vom Zielton ab</translation>
        </message>
        <message>
            <source>marker at {start_s} added</source>
            <translation>Anmerkung bei {start_s} hinzugefügt</translation>
        </message>
        <message>
            <source>marker at {start_s} changed</source>
            <translation>Anmerkung bei {start_s} geändert</translation>
        </message>
        <message>
            <source>marker at {start_s} deleted</source>
            <translation>Anmerkung bei {start_s} gelöscht</translation>
        </message>
        <message>
            <source>no clear change</source>
            <translation>keine klare Änderung</translation>
        </message>
        <message>
            <source>no clear change {value}</source>
            <translation>keine klare Änderung {value}</translation>
        </message>
        <message>
            <source>no item</source>
            <translation>kein Punkt</translation>
        </message>
        <message>
            <source>no minutes entered</source>
            <translation>keine Minuten eingetragen</translation>
        </message>
        <message>
            <source>no passage</source>
            <translation>keine Stelle</translation>
        </message>
        <message>
            <source>not clear</source>
            <translation>nicht klar</translation>
        </message>
        <message>
            <source>not measurable</source>
            <translation>nicht messbar</translation>
        </message>
        <message>
            <source>other</source>
            <translation>anderes</translation>
        </message>
        <message>
            <source>out by every plausible target</source>
            <translation>unsauber nach jedem möglichen Zielton</translation>
        </message>
        <message>
            <source>passage</source>
            <translation>Stelle</translation>
        </message>
        <message>
            <source>piece</source>
            <translation>Stück</translation>
        </message>
        <message>
            <source>scale</source>
            <translation>Tonleiter</translation>
        </message>
        <message>
            <source>self</source>
            <translation>selbst</translation>
        </message>
        <message>
            <source>sight-reading</source>
            <translation>Blattspiel</translation>
        </message>
        <message>
            <source>slower</source>
            <translation>langsamer</translation>
        </message>
        <message>
            <source>steadier</source>
            <translation>gleichmäßiger</translation>
        </message>
        <message>
            <source>still there</source>
            <translation>noch da</translation>
        </message>
        <message>
            <source>study</source>
            <translation>Etüde</translation>
        </message>
        <message>
            <source>teacher</source>
            <translation>Lehrkraft</translation>
        </message>
        <message>
            <source>the recording did not start</source>
            <translation>die Aufnahme begann nicht</translation>
        </message>
        <message>
            <source>the usual one</source>
            <translation>der übliche</translation>
        </message>
        <message>
            <source>to work on</source>
            <translation>zu bearbeiten</translation>
        </message>
        <message>
            <source>wider</source>
            <translation>weiter</translation>
        </message>
        <message>
            <source>worse {value}</source>
            <translation>schlechter {value}</translation>
        </message>
        <message>
            <source>{best} of {words} chosen as the best of several: choosing can look like getting better.</source>
            <translation>{best} von {words} als beste von mehreren gewählt: Wählen kann wie Besserwerden aussehen.</translation>
        </message>
        <message>
            <source>{break_minutes} of it are breaks: 5 min after every 25.</source>
            <translation>{break_minutes} davon sind Pausen: 5 min nach je 25.</translation>
        </message>
        <message>
            <source>{category}, weight {weight}, to work on ({author}): {text}</source>
            <translation>{category}, Gewicht {weight}, zu bearbeiten ({author}): {text}</translation>
        </message>
        <message>
            <source>{days} practised of {all}, {minutes}, {takes}, 1 rest day.</source>
            <translation>{days} geübt von {all}, {minutes}, {takes}, 1 Ruhetag.</translation>
        </message>
        <message>
            <source>{day} Apr {year}</source>
            <translation>{day}. Apr. {year}</translation>
        </message>
        <message>
            <source>{day} Aug {year}</source>
            <translation>{day}. Aug. {year}</translation>
        </message>
        <message>
            <source>{day} Dec {year}</source>
            <translation>{day}. Dez. {year}</translation>
        </message>
        <message>
            <source>{day} Feb {year}</source>
            <translation>{day}. Feb. {year}</translation>
        </message>
        <message>
            <source>{day} Jan {year}</source>
            <translation>{day}. Jan. {year}</translation>
        </message>
        <message>
            <source>{day} Jul {year}</source>
            <translation>{day}. Juli {year}</translation>
        </message>
        <message>
            <source>{day} Jun {year}</source>
            <translation>{day}. Juni {year}</translation>
        </message>
        <message>
            <source>{day} Mar {year}</source>
            <translation>{day}. März {year}</translation>
        </message>
        <message>
            <source>{day} May {year}</source>
            <translation>{day}. Mai {year}</translation>
        </message>
        <message>
            <source>{day} Nov {year}</source>
            <translation>{day}. Nov. {year}</translation>
        </message>
        <message>
            <source>{day} Oct {year}</source>
            <translation>{day}. Okt. {year}</translation>
        </message>
        <message>
            <source>{day} Sep {year}</source>
            <translation>{day}. Sept. {year}</translation>
        </message>
        <message>
            <source>{kept} days kept, day {day}</source>
            <translation>{kept} Tage gehalten, Tag {day}</translation>
        </message>
        <message>
            <source>{line}, {practised_min} practised in all.</source>
            <translation>{line}, insgesamt {practised_min} geübt.</translation>
        </message>
        <message>
            <source>{measure} a week over {takes} and {days}: {verdict}</source>
            <translation>{measure} je Woche über {takes} und {days}: {verdict}</translation>
        </message>
        <message>
            <source>{measure}: no clear change</source>
            <translation>{measure}: keine klare Änderung</translation>
        </message>
        <message>
            <source>{name} holds no sound.</source>
            <translation>{name} enthält keinen Klang.</translation>
        </message>
        <message>
            <source>{name} is not a sound file that can be read here.</source>
            <translation>{name} ist keine Tondatei, die hier gelesen werden kann.</translation>
        </message>
        <message>
            <source>{name}: {kept} days kept, day {day}</source>
            <translation>{name}: {kept} Tage gehalten, Tag {day}</translation>
        </message>
        <message>
            <source>{n} bars</source>
            <translation>{n} Takte</translation>
        </message>
        <message>
            <source>{n} days</source>
            <translation>{n} Tage</translation>
        </message>
        <message>
            <source>{n} files</source>
            <translation>{n} Dateien</translation>
        </message>
        <message>
            <source>{n} markers</source>
            <translation>{n} Anmerkungen</translation>
        </message>
        <message>
            <source>{n} marks</source>
            <translation>{n} Markierungen</translation>
        </message>
        <message>
            <source>{n} new clips</source>
            <translation>{n} neue Clips</translation>
        </message>
        <message>
            <source>{n} notes</source>
            <translation>{n} Noten</translation>
        </message>
        <message>
            <source>{n} practice days</source>
            <translation>{n} Übetage</translation>
        </message>
        <message>
            <source>{n} recordings</source>
            <translation>{n} Aufnahmen</translation>
        </message>
        <message>
            <source>{n} takes</source>
            <translation>{n} Aufnahmen</translation>
        </message>
        <message>
            <source>{n} weeks</source>
            <translation>{n} Wochen</translation>
        </message>
        <message>
            <source>{passage}, take {number}, {rest}</source>
            <translation>{passage}, Aufnahme {number}, {rest}</translation>
        </message>
        <message>
            <source>{passage}, take {number}, {start}, at {note}</source>
            <translation>{passage}, Aufnahme {number}, {start}, bei {note}</translation>
        </message>
        <message>
            <source>{unbroken_min} without a break. A few minutes' rest is good for hands, back and ears; if anything hurts, stop for today.</source>
            <translation>{unbroken_min} ohne Pause. Ein paar Minuten Ruhe tun Händen, Rücken und Ohren gut; wenn etwas wehtut, für heute aufhören.</translation>
        </message>
        <message>
            <source>{value} ({low} to {high}) {unit}</source>
            <translation>{value} ({low} bis {high}) {unit}</translation>
        </message>
        <message>
            <source>{value} BPM</source>
            <translation>{value} S/min</translation>
        </message>
        <message>
            <source>{value} cents</source>
            <translation>{value} Cent</translation>
        </message>
        <message>
            <source>{value} cents per minute</source>
            <translation>{value} Cent pro Minute</translation>
        </message>
        <message>
            <source>{what}, due in {days} days.</source>
            <translation>{what}, fällig in {days} Tagen.</translation>
        </message>
        <message>
            <source>{when}, take {number} ({length})</source>
            <translation>{when}, Aufnahme {number} ({length})</translation>
        </message>
    </context>
</TS>
