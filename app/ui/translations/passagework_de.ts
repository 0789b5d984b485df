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
            <translation> BPM</translation>
        </message>
        <message>
            <source> Hz</source>
            <translation> Hz</translation>
        </message>
        <message>
            <source> LUFS</source>
            <translation> LUFS</translation>
        </message>
        <message>
            <source> bars</source>
            <translation> Takte</translation>
        </message>
        <message>
            <source> cents</source>
            <translation> Cent</translation>
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
            <translation> bis {time}</translation>
        </message>
        <message>
            <source>'{name}' is not a note name.</source>
            <translation>„{name}“ ist kein Notenname.</translation>
        </message>
        <message>
            <source>, bars {bars}</source>
            <translation>, T. {bars}</translation>
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
            <source>A form lies over today. Esc puts it away; then the keys work again.</source>
            <translation>Ein Formular liegt über dem heutigen Tag. Esc legt es weg; dann wirken die Tasten wieder.</translation>
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
            <translation>Mit Text</translation>
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
            <source>Back to your own journal</source>
            <translation>Zurück zum eigenen Journal</translation>
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
            <source>Change it</source>
            <translation>Ändern</translation>
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
            <source>Each take is laid against the score or the reference take. This takes a moment.</source>
            <translation>Jede Aufnahme wird an die Noten oder an die Vergleichsaufnahme gelegt. Das dauert einen Moment.</translation>
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
            <source>It could not be finished; nothing unfinished is left.</source>
            <translation>Das ließ sich nicht fertigstellen; nichts Unfertiges ist übrig.</translation>
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
            <source>Its bars are not known. Give the passage a score.</source>
            <translation>Ihre Takte sind nicht bekannt; dafür braucht die Stelle Noten.</translation>
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
            <translation>Unterricht</translation>
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
            <source>Looking back</source>
            <translation>Rückblick</translation>
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
            <translation>Anmerkungen</translation>
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
            <translation>Noch nicht</translation>
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
            <translation>Pause</translation>
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
            <translation>Plan: {done} von {planned}</translation>
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
            <translation>Weglegen</translation>
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
            <source>Put the message or the form away, or clear the selection</source>
            <translation>Die Meldung oder das Formular weglegen oder die Auswahl aufheben</translation>
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
            <source>Reading the sound for its lane; the take can be heard already</source>
            <translation>Der Klang wird für seine Spur gelesen; die Aufnahme ist schon zu hören</translation>
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
            <source>Remark</source>
            <translation>Bemerkung</translation>
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
            <source>Since {day}: {rule}.</source>
            <translation>Seit {day}: {rule}.</translation>
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
            <translation>Tage von jemandem, {first} bis {last}, aus einem Paket. Was hier angemerkt und geschrieben wird, kommt von der Lehrkraft; aufgenommen oder gezählt wird hier nichts. Die Seite „Unterricht“ schreibt die Antwort.</translation>
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
            <translation>Aufnahme</translation>
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
            <source>The sound was not read to its end. Open the take again to see it.</source>
            <translation>Der Klang wurde nicht bis zum Ende gelesen. Die Aufnahme noch einmal öffnen, um ihn zu sehen.</translation>
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
            <source>Where that comes from</source>
            <translation>Woher das stammt</translation>
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
            <translation>Klick bei {click_bpm} BPM</translation>
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
            <source>day practised</source>
            <translation>geübter Tag</translation>
        </message>
        <message>
            <source>day since first entry</source>
            <translation>Tag seit dem ersten Eintrag</translation>
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
            <source>not measurable</source>
            <translation>nicht messbar</translation>
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
            <source>yyyy-MM-dd</source>
            <translation>dd.MM.yyyy</translation>
        </message>
        <message>
            <source>{bpm} BPM</source>
            <translation>{bpm} BPM</translation>
        </message>
        <message>
            <source>{change}, no interval</source>
            <translation>{change}, kein Intervall</translation>
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
            <source>{count} with too few measured weeks, or no minutes logged on it, to say anything.</source>
            <translation>{count} mit zu wenigen gemessenen Wochen oder ohne erfasste Minuten, um etwas zu sagen.</translation>
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
            <source>{name} is in the journal.</source>
            <translation>{name} ist im Journal.</translation>
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
            <source>'passagework follow carried TAKE' lists them.</source>
            <translation>„passagework follow carried TAKE“ zählt sie auf.</translation>
        </message>
        <message>
            <source>'{amount_text}' is no amount of practice</source>
            <translation>„{amount_text}“ ist keine Menge Übezeit</translation>
        </message>
        <message>
            <source>'{drone}' cannot be the drone: {problem}.</source>
            <translation>„{drone}“ kann nicht der Bordun sein: {problem}.</translation>
        </message>
        <message>
            <source>'{kept}' is too long for a category.</source>
            <translation>„{kept}“ ist zu lang für eine Kategorie.</translation>
        </message>
        <message>
            <source>'{name}' is no instrument of the list.</source>
            <translation>„{name}“ ist kein Instrument der Liste.</translation>
        </message>
        <message>
            <source>'{one}' is too long a name.</source>
            <translation>„{one}“ ist ein zu langer Name.</translation>
        </message>
        <message>
            <source>'{one}' needs minutes above 0.</source>
            <translation>„{one}“ braucht mehr als 0 Minuten.</translation>
        </message>
        <message>
            <source>'{promise}' has no number for {practice_day}.</source>
            <translation>„{promise}“ hat keine Nummer für {practice_day}.</translation>
        </message>
        <message>
            <source>'{promise}' is over, and its history stays as it is.</source>
            <translation>„{promise}“ ist zu Ende, und seine Geschichte bleibt, wie sie ist.</translation>
        </message>
        <message>
            <source>'{row}' is no day</source>
            <translation>„{row}“ ist kein Tag</translation>
        </message>
        <message>
            <source>'{row}' is on the list already.</source>
            <translation>„{row}“ steht schon in der Liste.</translation>
        </message>
        <message>
            <source>'{text}' are no strengths of beats.</source>
            <translation>„{text}“ sind keine Stärken von Schlägen.</translation>
        </message>
        <message>
            <source>'{text}' could be {found}.</source>
            <translation>„{text}“ könnte {found} sein.</translation>
        </message>
        <message>
            <source>'{text}' could be {titles}.</source>
            <translation>„{text}“ könnte {titles} sein.</translation>
        </message>
        <message>
            <source>'{text}' is no stretch of bars.</source>
            <translation>„{text}“ ist kein Abschnitt von Takten.</translation>
        </message>
        <message>
            <source>'{tonic}' is no tonic of a {mode} key.</source>
            <translation>„{tonic}“ ist kein Grundton einer Tonart in {mode}.</translation>
        </message>
        <message>
            <source>({left} left out)</source>
            <translation>({left} weggelassen)</translation>
        </message>
        <message>
            <source>({low} to {high})</source>
            <translation>({low} bis {high})</translation>
        </message>
        <message>
            <source>, and {hours} h before it{until}, as you reckon them</source>
            <translation>, und {hours} h davor{until}, nach eigener Schätzung</translation>
        </message>
        <message>
            <source>, and {others} more.</source>
            <translation>, und {others} weitere.</translation>
        </message>
        <message>
            <source>, at {near_note}</source>
            <translation>, bei {near_note}</translation>
        </message>
        <message>
            <source>, bars {value}</source>
            <translation>, Takte {value}</translation>
        </message>
        <message>
            <source>, once more after the device had failed ({retake_reason})</source>
            <translation>, noch einmal, nachdem das Gerät versagt hatte ({retake_reason})</translation>
        </message>
        <message>
            <source>, p = {p_value}, {pairs} pairs of weeks</source>
            <translation>, p = {p_value}, {pairs} Wochenpaare</translation>
        </message>
        <message>
            <source>, played {value} softer</source>
            <translation>, {value} leiser gespielt</translation>
        </message>
        <message>
            <source>, the target {target_bpm}.</source>
            <translation>, das Ziel {target_bpm}.</translation>
        </message>
        <message>
            <source>, time {turn}</source>
            <translation>, {turn}. Mal</translation>
        </message>
        <message>
            <source>, {start} to {end}</source>
            <translation>, {start} bis {end}</translation>
        </message>
        <message>
            <source>, {without} made without retakes</source>
            <translation>, {without} ohne Wiederholung gemacht</translation>
        </message>
        <message>
            <source>1 bar</source>
            <translation>1 Takt</translation>
        </message>
        <message>
            <source>1 broken-off one</source>
            <translation>1 abgebrochener</translation>
        </message>
        <message>
            <source>1 channel</source>
            <translation>1 Kanal</translation>
        </message>
        <message>
            <source>1 clip</source>
            <translation>1 Clip</translation>
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
            <source>1 measured note on {name}</source>
            <translation>1 gemessenen Note auf {name}</translation>
        </message>
        <message>
            <source>1 measured place</source>
            <translation>1 gemessener Ort</translation>
        </message>
        <message>
            <source>1 more promise</source>
            <translation>1 weiterer Vorsatz</translation>
        </message>
        <message>
            <source>1 new clip</source>
            <translation>1 neuer Clip</translation>
        </message>
        <message>
            <source>1 new marker</source>
            <translation>1 neue Anmerkung</translation>
        </message>
        <message>
            <source>1 new take</source>
            <translation>1 neue Aufnahme</translation>
        </message>
        <message>
            <source>1 note</source>
            <translation>1 Note</translation>
        </message>
        <message>
            <source>1 octave</source>
            <translation>1 Oktave</translation>
        </message>
        <message>
            <source>1 passage</source>
            <translation>1 Stelle</translation>
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
            <source>1 remark</source>
            <translation>1 Bemerkung</translation>
        </message>
        <message>
            <source>1 rest day</source>
            <translation>1 Ruhetag</translation>
        </message>
        <message>
            <source>1 row</source>
            <translation>1 Zeile</translation>
        </message>
        <message>
            <source>1 sample</source>
            <translation>1 Abtastwert</translation>
        </message>
        <message>
            <source>1 sample was</source>
            <translation>1 Abtastwert wurde</translation>
        </message>
        <message>
            <source>1 take</source>
            <translation>1 Aufnahme</translation>
        </message>
        <message>
            <source>1 take on {days}</source>
            <translation>1 Aufnahme an {days:dative}</translation>
        </message>
        <message>
            <source>1 task</source>
            <translation>1 Aufgabe</translation>
        </message>
        <message>
            <source>1 week</source>
            <translation>1 Woche</translation>
        </message>
        <message>
            <source>1 whole run</source>
            <translation>1 ganzer Durchlauf</translation>
        </message>
        <message>
            <source>32-bit samples</source>
            <translation>32-Bit-Werte</translation>
        </message>
        <message>
            <source>: {minutes_done} of {minutes} min done</source>
            <translation>: {minutes_done} von {minutes} min getan</translation>
        </message>
        <message>
            <source>: {total} h in all</source>
            <translation>: {total} h insgesamt</translation>
        </message>
        <message>
            <source>; at most {longest} in a row inside your bounds.</source>
            <translation>; höchstens {longest} hintereinander innerhalb der Grenzen.</translation>
        </message>
        <message>
            <source>; {unclear} could not be told</source>
            <translation>; {unclear} nicht zu entscheiden</translation>
        </message>
        <message>
            <source>A = {a_hz} Hz</source>
            <translation>A = {a_hz} Hz</translation>
        </message>
        <message>
            <source>A against 440 Hz</source>
            <translation>A gegen 440 Hz</translation>
        </message>
        <message>
            <source>A bar has 1 to 16 beats here.</source>
            <translation>Ein Takt hat hier 1 bis 16 Schläge.</translation>
        </message>
        <message>
            <source>A beat holds 1 to 4 notes.</source>
            <translation>Ein Schlag fasst 1 bis 4 Noten.</translation>
        </message>
        <message>
            <source>A bow holds 1 to {most_slurred} notes.</source>
            <translation>Ein Bogen fasst 1 bis {most_slurred} Noten.</translation>
        </message>
        <message>
            <source>A break can be planned from today on, not for days that are over.</source>
            <translation>Eine Pause lässt sich ab heute planen, nicht für vergangene Tage.</translation>
        </message>
        <message>
            <source>A break cannot be due before anything was played.</source>
            <translation>Eine Pause kann nicht fällig sein, bevor gespielt wurde.</translation>
        </message>
        <message>
            <source>A break is planned from {first} to {last}.</source>
            <translation>Eine Pause ist geplant vom {first} bis zum {last}.</translation>
        </message>
        <message>
            <source>A category needs a name.</source>
            <translation>Eine Kategorie braucht einen Namen.</translation>
        </message>
        <message>
            <source>A click of {bpm} BPM cannot be played along with.</source>
            <translation>Zu einem Klick mit {bpm} BPM lässt sich nicht spielen.</translation>
        </message>
        <message>
            <source>A clip has -30 to -10 LUFS.</source>
            <translation>Ein Clip hat -30 bis -10 LUFS.</translation>
        </message>
        <message>
            <source>A count-in needs a tempo.</source>
            <translation>Zum Vorzählen braucht es ein Tempo.</translation>
        </message>
        <message>
            <source>A day cannot ask for {minutes} minutes.</source>
            <translation>Ein Tag kann nicht {minutes} Minuten verlangen.</translation>
        </message>
        <message>
            <source>A day cannot ask for {takes} takes.</source>
            <translation>Ein Tag kann nicht {takes} Aufnahmen verlangen.</translation>
        </message>
        <message>
            <source>A day has at most 1440 minutes.</source>
            <translation>Ein Tag hat höchstens 1440 Minuten.</translation>
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
            <source>A kind of day needs a name.</source>
            <translation>Eine Tagart braucht einen Namen.</translation>
        </message>
        <message>
            <source>A line of a plan has at least one minute.</source>
            <translation>Eine Planzeile hat mindestens eine Minute.</translation>
        </message>
        <message>
            <source>A line of a plan says what to practise.</source>
            <translation>Eine Planzeile sagt, was zu üben ist.</translation>
        </message>
        <message>
            <source>A marker needs a category.</source>
            <translation>Eine Anmerkung braucht eine Kategorie.</translation>
        </message>
        <message>
            <source>A marker that is {was} cannot become {wanted}.</source>
            <translation>Eine Anmerkung, die {was} ist, kann nicht {wanted} werden.</translation>
        </message>
        <message>
            <source>A marker weighs 1 (slight), 2 or 3 (first thing to fix), not {weight}.</source>
            <translation>Eine Anmerkung wiegt 1 (leicht), 2 oder 3 (zuerst zu beheben), nicht {weight}.</translation>
        </message>
        <message>
            <source>A new run began on {run_began}</source>
            <translation>Eine neue Folge begann am {run_began}</translation>
        </message>
        <message>
            <source>A number of '{current}' was shared, so the promise stays.</source>
            <translation>Eine Nummer von „{current}“ wurde weitergegeben, darum bleibt der Vorsatz.</translation>
        </message>
        <message>
            <source>A passage has one chance in a rehearsal.</source>
            <translation>Eine Stelle hat in einer Probe eine Chance.</translation>
        </message>
        <message>
            <source>A passage is on the list by itself.</source>
            <translation>Eine Stelle steht von selbst in der Liste.</translation>
        </message>
        <message>
            <source>A passage needs a name.</source>
            <translation>Eine Stelle braucht einen Namen.</translation>
        </message>
        <message>
            <source>A picture cannot be saved as '{path}'.</source>
            <translation>Ein Bild lässt sich nicht als „{path}“ speichern.</translation>
        </message>
        <message>
            <source>A plan is a proposal, never a duty.</source>
            <translation>Ein Plan ist ein Vorschlag, nie eine Pflicht.</translation>
        </message>
        <message>
            <source>A plan needs 1 to {most_minutes} minutes, not {minutes_available}.</source>
            <translation>Ein Plan braucht 1 bis {most_minutes} Minuten, nicht {minutes_available}.</translation>
        </message>
        <message>
            <source>A promise is for 1 to {most_days} days, not {days}.</source>
            <translation>Ein Vorsatz gilt für 1 bis {most_days} Tage, nicht {days}.</translation>
        </message>
        <message>
            <source>A promise needs a name.</source>
            <translation>Ein Vorsatz braucht einen Namen.</translation>
        </message>
        <message>
            <source>A quotation mark in the file is opened and never closed.</source>
            <translation>In der Datei wird ein Anführungszeichen geöffnet und nie geschlossen.</translation>
        </message>
        <message>
            <source>A recording runs already.</source>
            <translation>Es läuft schon eine Aufnahme.</translation>
        </message>
        <message>
            <source>A rehearsal is running.</source>
            <translation>Eine Probe läuft.</translation>
        </message>
        <message>
            <source>A rehearsal needs passages.</source>
            <translation>Eine Probe braucht Stellen.</translation>
        </message>
        <message>
            <source>A reminder needs a time of day.</source>
            <translation>Eine Erinnerung braucht eine Uhrzeit.</translation>
        </message>
        <message>
            <source>A rule cannot be changed for days that are over ({since}).</source>
            <translation>Eine Regel lässt sich nicht für vergangene Tage ändern ({since}).</translation>
        </message>
        <message>
            <source>A scale has 1 to {most_octaves} octaves.</source>
            <translation>Eine Tonleiter hat 1 bis {most_octaves} Oktaven.</translation>
        </message>
        <message>
            <source>A second take needs the reason on record.</source>
            <translation>Eine zweite Aufnahme braucht einen festgehaltenen Grund.</translation>
        </message>
        <message>
            <source>A slide has no one pitch.</source>
            <translation>Ein Gleiten hat keine einzelne Tonhöhe.</translation>
        </message>
        <message>
            <source>A sound device hangs, probably because it was pulled out.</source>
            <translation>Ein Tongerät hängt, wahrscheinlich weil es abgezogen wurde.</translation>
        </message>
        <message>
            <source>A stop</source>
            <translation>Ein Halt</translation>
        </message>
        <message>
            <source>A trend needs takes from at least {fewest_days} practice days.</source>
            <translation>Ein Trend braucht Aufnahmen von mindestens {fewest_days} Übetagen.</translation>
        </message>
        <message>
            <source>A trill goes between two pitches.</source>
            <translation>Ein Triller wechselt zwischen zwei Tonhöhen.</translation>
        </message>
        <message>
            <source>A verdict needs at least {fewest_days_a_side} practice days on each side.</source>
            <translation>Ein Urteil braucht mindestens {fewest_days_a_side} Übetage auf jeder Seite.</translation>
        </message>
        <message>
            <source>A year</source>
            <translation>Ein Jahr</translation>
        </message>
        <message>
            <source>A {name} of {value} {unit} makes no sense.</source>
            <translation>Der Wert {value} {unit} ist als {name} nicht sinnvoll.</translation>
        </message>
        <message>
            <source>Add another one first.</source>
            <translation>Zuerst eine weitere hinzufügen.</translation>
        </message>
        <message>
            <source>Add it anew.</source>
            <translation>Neu hinzufügen.</translation>
        </message>
        <message>
            <source>Add it as a passage, with its piece.</source>
            <translation>Als Stelle mit ihrem Stück hinzufügen.</translation>
        </message>
        <message>
            <source>Add it first.</source>
            <translation>Zuerst hinzufügen.</translation>
        </message>
        <message>
            <source>Add it on the Practice page, or by recording or importing into it.</source>
            <translation>Auf der Seite Üben hinzufügen, oder indem dafür aufgenommen oder importiert wird.</translation>
        </message>
        <message>
            <source>Added: not written.</source>
            <translation>Hinzugefügt: nicht notiert.</translation>
        </message>
        <message>
            <source>After the passage has ended</source>
            <translation>Nach dem Ende der Stelle</translation>
        </message>
        <message>
            <source>Against the open {string} string {against}: {reading} ± {uncertainty} cents.</source>
            <translation>Gegen die leere {string}-Saite {against}: {reading} ± {uncertainty} Cent.</translation>
        </message>
        <message>
            <source>Against the score</source>
            <translation>Gegen die Noten</translation>
        </message>
        <message>
            <source>Allow reading that folder, or open another journal.</source>
            <translation>Das Lesen dieses Ordners erlauben oder ein anderes Journal öffnen.</translation>
        </message>
        <message>
            <source>Allow writing to that folder, or choose another folder for the journal.</source>
            <translation>Das Schreiben in diesen Ordner erlauben oder einen anderen Ordner für das Journal wählen.</translation>
        </message>
        <message>
            <source>An A of {a_hz} Hz is too far off.</source>
            <translation>Ein A mit {a_hz} Hz liegt zu weit ab.</translation>
        </message>
        <message>
            <source>An assignment asks for at least one minute.</source>
            <translation>Eine Aufgabe verlangt mindestens eine Minute.</translation>
        </message>
        <message>
            <source>An item needs a name.</source>
            <translation>Ein Punkt braucht einen Namen.</translation>
        </message>
        <message>
            <source>Another channel of the input: {channel}, then {channel2}.</source>
            <translation>Ein anderer Kanal des Eingangs: {channel}, dann {channel2}.</translation>
        </message>
        <message>
            <source>Another input: {device}, then {device2}.</source>
            <translation>Anderer Eingang: {device}, dann {device2}.</translation>
        </message>
        <message>
            <source>Another instrument: {instrument} and {instrument2}.</source>
            <translation>Ein anderes Instrument: {instrument} und {instrument2}.</translation>
        </message>
        <message>
            <source>Another recording level: dynamics are not comparable as such.</source>
            <translation>Ein anderer Aufnahmepegel: Die Dynamik ist so nicht vergleichbar.</translation>
        </message>
        <message>
            <source>Another tempo: {bpm_a} and {bpm_b} BPM.</source>
            <translation>Ein anderes Tempo: {bpm_a} und {bpm_b} BPM.</translation>
        </message>
        <message>
            <source>Apr</source>
            <translation>Apr</translation>
        </message>
        <message>
            <source>Arpeggios</source>
            <translation>Arpeggien</translation>
        </message>
        <message>
            <source>As tuned in this take, against pure fifths from the A in use.</source>
            <translation>Wie in dieser Aufnahme gestimmt, gegen reine Quinten vom verwendeten A aus.</translation>
        </message>
        <message>
            <source>Ask a new one.</source>
            <translation>Eine neue stellen.</translation>
        </message>
        <message>
            <source>Ask for it once more.</source>
            <translation>Noch einmal darum bitten.</translation>
        </message>
        <message>
            <source>Assigned</source>
            <translation>Aufgegeben</translation>
        </message>
        <message>
            <source>Assigned: {minutes_done} of {minutes} min done</source>
            <translation>Aufgegeben: {minutes_done} von {minutes} min getan</translation>
        </message>
        <message>
            <source>Assigned: {minutes_done} of {minutes} min done, due in {days}</source>
            <translation>Aufgegeben: {minutes_done} von {minutes} min getan, fällig in {days:dative}</translation>
        </message>
        <message>
            <source>Assigned: {minutes_done} of {minutes} min done, due today</source>
            <translation>Aufgegeben: {minutes_done} von {minutes} min getan, heute fällig</translation>
        </message>
        <message>
            <source>Assigned: {minutes_done} of {minutes} min done, due tomorrow</source>
            <translation>Aufgegeben: {minutes_done} von {minutes} min getan, morgen fällig</translation>
        </message>
        <message>
            <source>Audition</source>
            <translation>Probespiel</translation>
        </message>
        <message>
            <source>Aug</source>
            <translation>Aug</translation>
        </message>
        <message>
            <source>B is moved by {offset_db} dB; then the two ordinarily differ by {difference_db} dB.</source>
            <translation>B ist um {offset_db} dB verschoben; dann weichen die beiden gewöhnlich um {difference_db} dB voneinander ab.</translation>
        </message>
        <message>
            <source>BPM per minute</source>
            <translation>BPM pro Minute</translation>
        </message>
        <message>
            <source>Bar {written}</source>
            <translation>Takt {written}</translation>
        </message>
        <message>
            <source>Bar {written}, beat {beat}</source>
            <translation>Takt {written}, Schlag {beat}</translation>
        </message>
        <message>
            <source>Bassoon</source>
            <translation>Fagott</translation>
        </message>
        <message>
            <source>Before the passage begins</source>
            <translation>Vor dem Beginn der Stelle</translation>
        </message>
        <message>
            <source>Begin in octave {where}.</source>
            <translation>In Oktave {where} beginnen.</translation>
        </message>
        <message>
            <source>Begins on {start}.</source>
            <translation>Beginnt am {start}.</translation>
        </message>
        <message>
            <source>Between the notes</source>
            <translation>Zwischen den Noten</translation>
        </message>
        <message>
            <source>Both channels hold the same sound: it reads 3 dB louder than the same sound in one channel.</source>
            <translation>Beide Kanäle enthalten denselben Klang: Er misst sich 3 dB lauter als derselbe Klang in einem Kanal.</translation>
        </message>
        <message>
            <source>Broken thirds</source>
            <translation>Gebrochene Terzen</translation>
        </message>
        <message>
            <source>Busier and quieter times are told apart from {fewest_weeks} whole weeks on; so far there are {whole_weeks}.</source>
            <translation>Vollere und ruhigere Zeiten werden ab {fewest_weeks} ganzen Wochen unterschieden; bisher sind es {whole_weeks}.</translation>
        </message>
        <message>
            <source>Call it 'short day', for instance.</source>
            <translation>Zum Beispiel „kurzer Tag“ nennen.</translation>
        </message>
        <message>
            <source>Cello</source>
            <translation>Violoncello</translation>
        </message>
        <message>
            <source>Change the passage's own name.</source>
            <translation>Den Namen der Stelle selbst ändern.</translation>
        </message>
        <message>
            <source>Check that both are plugged in, then try again.</source>
            <translation>Prüfen, dass beide angeschlossen sind, dann erneut versuchen.</translation>
        </message>
        <message>
            <source>Check that it is a file you may open.</source>
            <translation>Prüfen, dass die Datei geöffnet werden darf.</translation>
        </message>
        <message>
            <source>Check that it is plugged in.</source>
            <translation>Prüfen, dass er angeschlossen ist.</translation>
        </message>
        <message>
            <source>Check that the disk is connected and healthy, then try again.</source>
            <translation>Prüfen, dass die Platte verbunden und in Ordnung ist, dann erneut versuchen.</translation>
        </message>
        <message>
            <source>Check that the disk is plugged in and the file may be read.</source>
            <translation>Prüfen, dass die Platte angeschlossen ist und die Datei gelesen werden darf.</translation>
        </message>
        <message>
            <source>Check that the input is plugged in and not muted, then record again.</source>
            <translation>Prüfen, dass der Eingang angeschlossen und nicht stumm ist, dann neu aufnehmen.</translation>
        </message>
        <message>
            <source>Check the disk and import the file again.</source>
            <translation>Die Platte prüfen und die Datei erneut importieren.</translation>
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
            <source>Check the name and the folder.</source>
            <translation>Namen und Ordner prüfen.</translation>
        </message>
        <message>
            <source>Check the name.</source>
            <translation>Den Namen prüfen.</translation>
        </message>
        <message>
            <source>Check the path, or record or import a take to start one there.</source>
            <translation>Den Pfad prüfen, oder dort mit einer Aufnahme oder einem Import ein Journal beginnen.</translation>
        </message>
        <message>
            <source>Check the permissions of the file and its folder.</source>
            <translation>Die Rechte der Datei und ihres Ordners prüfen.</translation>
        </message>
        <message>
            <source>Choose 0 for none.</source>
            <translation>0 wählen für keine.</translation>
        </message>
        <message>
            <source>Choose 1 to 100, or none: anything counts.</source>
            <translation>1 bis 100 wählen, oder keine: Alles zählt.</translation>
        </message>
        <message>
            <source>Choose 1 to {minutes_a_day}, or none: then anything counts.</source>
            <translation>1 bis {minutes_a_day} wählen, oder keine: Dann zählt alles.</translation>
        </message>
        <message>
            <source>Choose 1, 2 or 3.</source>
            <translation>1, 2 oder 3 wählen.</translation>
        </message>
        <message>
            <source>Choose 2 or 4 notes a beat.</source>
            <translation>2 oder 4 Noten pro Schlag wählen.</translation>
        </message>
        <message>
            <source>Choose 380 to 480 Hz.</source>
            <translation>380 bis 480 Hz wählen.</translation>
        </message>
        <message>
            <source>Choose FLAC instead.</source>
            <translation>Stattdessen FLAC wählen.</translation>
        </message>
        <message>
            <source>Choose a CSV file of minutes.</source>
            <translation>Eine CSV-Datei mit Minuten wählen.</translation>
        </message>
        <message>
            <source>Choose a WAV, FLAC, OGG, MP3, M4A, MP4 or MOV file.</source>
            <translation>Eine WAV-, FLAC-, OGG-, MP3-, M4A-, MP4- oder MOV-Datei wählen.</translation>
        </message>
        <message>
            <source>Choose a click or a drone.</source>
            <translation>Einen Klick oder einen Bordun wählen.</translation>
        </message>
        <message>
            <source>Choose a clip with sound.</source>
            <translation>Einen Clip mit Ton wählen.</translation>
        </message>
        <message>
            <source>Choose a file in it.</source>
            <translation>Eine Datei darin wählen.</translation>
        </message>
        <message>
            <source>Choose a file on a disk.</source>
            <translation>Eine Datei auf einem Datenträger wählen.</translation>
        </message>
        <message>
            <source>Choose a file that ends in .pwbundle.</source>
            <translation>Eine Datei wählen, die auf .pwbundle endet.</translation>
        </message>
        <message>
            <source>Choose a file with minutes.</source>
            <translation>Eine Datei mit Minuten wählen.</translation>
        </message>
        <message>
            <source>Choose a folder for the journal.</source>
            <translation>Einen Ordner für das Journal wählen.</translation>
        </message>
        <message>
            <source>Choose a folder that is there.</source>
            <translation>Einen vorhandenen Ordner wählen.</translation>
        </message>
        <message>
            <source>Choose a later day.</source>
            <translation>Einen späteren Tag wählen.</translation>
        </message>
        <message>
            <source>Choose a later end or an earlier start.</source>
            <translation>Ein späteres Ende oder einen früheren Anfang wählen.</translation>
        </message>
        <message>
            <source>Choose a later end, or none.</source>
            <translation>Ein späteres Ende wählen, oder keines.</translation>
        </message>
        <message>
            <source>Choose a later take of the marker's own passage.</source>
            <translation>Eine spätere Aufnahme der Stelle dieser Anmerkung wählen.</translation>
        </message>
        <message>
            <source>Choose a longer passage or another recording.</source>
            <translation>Eine längere Stelle oder eine andere Aufnahme wählen.</translation>
        </message>
        <message>
            <source>Choose a loudness between them.</source>
            <translation>Eine Lautheit dazwischen wählen.</translation>
        </message>
        <message>
            <source>Choose a new folder.</source>
            <translation>Einen neuen Ordner wählen.</translation>
        </message>
        <message>
            <source>Choose a passage.</source>
            <translation>Eine Stelle wählen.</translation>
        </message>
        <message>
            <source>Choose a place inside the recording.</source>
            <translation>Einen Ort innerhalb der Aufnahme wählen.</translation>
        </message>
        <message>
            <source>Choose a position from 0 to {duration_s} s.</source>
            <translation>Eine Position von 0 bis {duration_s} s wählen.</translation>
        </message>
        <message>
            <source>Choose a shorter stretch, or allow longer clips.</source>
            <translation>Einen kürzeren Abschnitt wählen oder längere Clips erlauben.</translation>
        </message>
        <message>
            <source>Choose a take of the journal.</source>
            <translation>Eine Aufnahme des Journals wählen.</translation>
        </message>
        <message>
            <source>Choose a take of today.</source>
            <translation>Eine Aufnahme von heute wählen.</translation>
        </message>
        <message>
            <source>Choose a time between them.</source>
            <translation>Eine Zeit dazwischen wählen.</translation>
        </message>
        <message>
            <source>Choose an earlier start.</source>
            <translation>Einen früheren Anfang wählen.</translation>
        </message>
        <message>
            <source>Choose an end after the start, or none for a moment.</source>
            <translation>Ein Ende nach dem Anfang wählen, oder keines für einen Augenblick.</translation>
        </message>
        <message>
            <source>Choose an hour from 0 to {last_turn_hour}.</source>
            <translation>Eine Stunde von 0 bis {last_turn_hour} wählen.</translation>
        </message>
        <message>
            <source>Choose another channel or input.</source>
            <translation>Einen anderen Kanal oder Eingang wählen.</translation>
        </message>
        <message>
            <source>Choose another file.</source>
            <translation>Eine andere Datei wählen.</translation>
        </message>
        <message>
            <source>Choose another name.</source>
            <translation>Einen anderen Namen wählen.</translation>
        </message>
        <message>
            <source>Choose another number of beats.</source>
            <translation>Eine andere Zahl von Schlägen wählen.</translation>
        </message>
        <message>
            <source>Choose another number.</source>
            <translation>Eine andere Zahl wählen.</translation>
        </message>
        <message>
            <source>Choose another one.</source>
            <translation>Eine andere Wahl treffen.</translation>
        </message>
        <message>
            <source>Choose another place.</source>
            <translation>Einen anderen Ort wählen.</translation>
        </message>
        <message>
            <source>Choose another promise, or none.</source>
            <translation>Einen anderen Vorsatz wählen, oder keinen.</translation>
        </message>
        <message>
            <source>Choose another time.</source>
            <translation>Eine andere Zeit wählen.</translation>
        </message>
        <message>
            <source>Choose at least one.</source>
            <translation>Mindestens eine wählen.</translation>
        </message>
        <message>
            <source>Choose at most six weekdays, from 0 (Monday) to 6.</source>
            <translation>Höchstens sechs Wochentage wählen, von 0 (Montag) bis 6.</translation>
        </message>
        <message>
            <source>Choose each once.</source>
            <translation>Jede nur einmal wählen.</translation>
        </message>
        <message>
            <source>Choose fewer bars.</source>
            <translation>Weniger Takte wählen.</translation>
        </message>
        <message>
            <source>Choose fewer octaves.</source>
            <translation>Weniger Oktaven wählen.</translation>
        </message>
        <message>
            <source>Choose it there.</source>
            <translation>Dort wählen.</translation>
        </message>
        <message>
            <source>Choose more of it.</source>
            <translation>Mehr davon wählen.</translation>
        </message>
        <message>
            <source>Choose one from 00:00 to 23:59, or none.</source>
            <translation>Eine von 00:00 bis 23:59 wählen, oder keine.</translation>
        </message>
        <message>
            <source>Choose one of these hours.</source>
            <translation>Eine dieser Stunden wählen.</translation>
        </message>
        <message>
            <source>Choose one of {known}.</source>
            <translation>Eine Möglichkeit wählen: {known}.</translation>
        </message>
        <message>
            <source>Choose one of {mode}.</source>
            <translation>Eine Möglichkeit wählen: {mode}.</translation>
        </message>
        <message>
            <source>Choose one that is there.</source>
            <translation>Einen vorhandenen wählen.</translation>
        </message>
        <message>
            <source>Choose one, for instance intonation or rhythm.</source>
            <translation>Eine wählen, zum Beispiel Intonation oder Rhythmus.</translation>
        </message>
        <message>
            <source>Choose one.</source>
            <translation>Eines wählen.</translation>
        </message>
        <message>
            <source>Choose other days, or end that one first.</source>
            <translation>Andere Tage wählen oder jene zuerst beenden.</translation>
        </message>
        <message>
            <source>Choose other days.</source>
            <translation>Andere Tage wählen.</translation>
        </message>
        <message>
            <source>Choose such a number.</source>
            <translation>Eine solche Zahl wählen.</translation>
        </message>
        <message>
            <source>Choose the folder where your phone's clips arrive.</source>
            <translation>Den Ordner wählen, in dem die Clips des Telefons ankommen.</translation>
        </message>
        <message>
            <source>Choose the tempo of the click.</source>
            <translation>Das Tempo des Klicks wählen.</translation>
        </message>
        <message>
            <source>Choose two columns.</source>
            <translation>Zwei Spalten wählen.</translation>
        </message>
        <message>
            <source>Choose {low} to {high} {unit}.</source>
            <translation>{low} bis {high} {unit} wählen.</translation>
        </message>
        <message>
            <source>Choose {slowest_bpm} to {fastest_bpm} BPM.</source>
            <translation>{slowest_bpm} bis {fastest_bpm} BPM wählen.</translation>
        </message>
        <message>
            <source>Choosing alone can make such a take better than a day's only one.</source>
            <translation>Das Auswählen allein kann eine solche Aufnahme besser machen als die einzige eines Tages.</translation>
        </message>
        <message>
            <source>Clarinet</source>
            <translation>Klarinette</translation>
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
            <source>Close it, or export the file anew.</source>
            <translation>Schließe es, oder exportiere die Datei neu.</translation>
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
            <source>Close other programs that use the sound devices and measure again.</source>
            <translation>Andere Programme schließen, die die Tongeräte benutzen, und erneut messen.</translation>
        </message>
        <message>
            <source>Close the program and start it again; everything recorded so far is kept.</source>
            <translation>Das Programm schließen und neu starten; alles bisher Aufgenommene bleibt erhalten.</translation>
        </message>
        <message>
            <source>Concert</source>
            <translation>Konzert</translation>
        </message>
        <message>
            <source>Copy the file again from where it was made, or use another one.</source>
            <translation>Die Datei noch einmal von ihrem Ursprung kopieren oder eine andere nehmen.</translation>
        </message>
        <message>
            <source>Copy the file again from where it was made.</source>
            <translation>Die Datei noch einmal von ihrem Ursprung kopieren.</translation>
        </message>
        <message>
            <source>Crescendo</source>
            <translation>Crescendo</translation>
        </message>
        <message>
            <source>Dec</source>
            <translation>Dez</translation>
        </message>
        <message>
            <source>Depends on the key: plausible targets lie {low} to {high} cents from this one; give the tonic to tell.</source>
            <translation>Hängt von der Tonart ab: Mögliche Zieltöne liegen {low} bis {high} Cent von diesem entfernt; der Grundton entscheidet es.</translation>
        </message>
        <message>
            <source>Depends on the temperament: {readings} cents.</source>
            <translation>Hängt von der Stimmung ab: {readings} Cent.</translation>
        </message>
        <message>
            <source>Deviation</source>
            <translation>Abweichung</translation>
        </message>
        <message>
            <source>Devices cannot be scanned while an input is in use.</source>
            <translation>Geräte lassen sich nicht suchen, solange ein Eingang benutzt wird.</translation>
        </message>
        <message>
            <source>Diminuendo</source>
            <translation>Diminuendo</translation>
        </message>
        <message>
            <source>Double bass</source>
            <translation>Kontrabass</translation>
        </message>
        <message>
            <source>Drags</source>
            <translation>Schleppt</translation>
        </message>
        <message>
            <source>Drift</source>
            <translation>Drift</translation>
        </message>
        <message>
            <source>Drift of the pitch</source>
            <translation>Drift der Tonhöhe</translation>
        </message>
        <message>
            <source>Dynamic span</source>
            <translation>Dynamik­umfang</translation>
        </message>
        <message>
            <source>Dynamic span {value}</source>
            <translation>Dynamikumfang {value}</translation>
        </message>
        <message>
            <source>Dynamics are then not comparable with that take.</source>
            <translation>Die Dynamik ist dann mit jener Aufnahme nicht vergleichbar.</translation>
        </message>
        <message>
            <source>Dynamics are then not comparable.</source>
            <translation>Die Dynamik ist dann nicht vergleichbar.</translation>
        </message>
        <message>
            <source>End its name in png, svg or csv.</source>
            <translation>Den Namen auf png, svg oder csv enden lassen.</translation>
        </message>
        <message>
            <source>Ended on {ended_on}; every day kept stays kept.</source>
            <translation>Beendet am {ended_on}; jeder gehaltene Tag bleibt gehalten.</translation>
        </message>
        <message>
            <source>Equal</source>
            <translation>Gleichschwebend</translation>
        </message>
        <message>
            <source>Every passage has had its chance.</source>
            <translation>Jede Stelle hatte ihre Chance.</translation>
        </message>
        <message>
            <source>Exam</source>
            <translation>Prüfung</translation>
        </message>
        <message>
            <source>Export it as CSV anew.</source>
            <translation>Neu als CSV exportieren.</translation>
        </message>
        <message>
            <source>Export it as CSV, one row a day or a session, with commas, semicolons, tabs or bars between the columns.</source>
            <translation>Exportiere sie als CSV, je Tag oder Sitzung eine Zeile, mit Kommas, Semikolons, Tabulatoren oder senkrechten Strichen zwischen den Spalten.</translation>
        </message>
        <message>
            <source>Fades and the title last 0 to 10 s.</source>
            <translation>Blenden und Titel dauern 0 bis 10 s.</translation>
        </message>
        <message>
            <source>Faster than the take's mean tempo by so much.</source>
            <translation>Um so viel schneller als das mittlere Tempo der Aufnahme.</translation>
        </message>
        <message>
            <source>Feb</source>
            <translation>Feb</translation>
        </message>
        <message>
            <source>Fewer than {fewest_for_drift} measured notes show no movement of the pitch.</source>
            <translation>Weniger als {fewest_for_drift} gemessene Noten zeigen keine Bewegung der Tonhöhe.</translation>
        </message>
        <message>
            <source>Fewer than {fewest_onsets} note onsets.</source>
            <translation>Weniger als {fewest_onsets} Notenanfänge.</translation>
        </message>
        <message>
            <source>File it under a passage first.</source>
            <translation>Zuerst bei einer Stelle ablegen.</translation>
        </message>
        <message>
            <source>Finger</source>
            <translation>Finger</translation>
        </message>
        <message>
            <source>Finish or end it first.</source>
            <translation>Zuerst abschließen oder abbrechen.</translation>
        </message>
        <message>
            <source>First against latest</source>
            <translation>Erste gegen neueste</translation>
        </message>
        <message>
            <source>Flute</source>
            <translation>Flöte</translation>
        </message>
        <message>
            <source>Forgotten</source>
            <translation>Vergessen</translation>
        </message>
        <message>
            <source>Frames lost while recording: {dropped_frames}.</source>
            <translation>Beim Aufnehmen verlorene Abtastwerte: {dropped_frames}.</translation>
        </message>
        <message>
            <source>Free some space on it and try again.</source>
            <translation>Etwas Platz schaffen und erneut versuchen.</translation>
        </message>
        <message>
            <source>Fri</source>
            <translation>Fr</translation>
        </message>
        <message>
            <source>Fri {rest}</source>
            <translation>Fr {rest}</translation>
        </message>
        <message>
            <source>Fridays</source>
            <translation>freitags</translation>
        </message>
        <message>
            <source>From soft to loud while playing (10th to 95th percentile of momentary loudness).</source>
            <translation>Von leise bis laut beim Spielen (10. bis 95. Perzentil der momentanen Lautheit).</translation>
        </message>
        <message>
            <source>From {value} % of the notes, {rest} % of the sounding time.</source>
            <translation>Aus {value} % der Noten, {rest} % der klingenden Zeit.</translation>
        </message>
        <message>
            <source>Give a goal, minutes or a passage.</source>
            <translation>Ein Ziel, Minuten oder eine Stelle angeben.</translation>
        </message>
        <message>
            <source>Give between 0 and {most_minutes} minutes.</source>
            <translation>0 bis {most_minutes} Minuten angeben.</translation>
        </message>
        <message>
            <source>Give each its own name.</source>
            <translation>Jeder einen eigenen Namen geben.</translation>
        </message>
        <message>
            <source>Give each its own number of minutes.</source>
            <translation>Jeder eine eigene Zahl von Minuten geben.</translation>
        </message>
        <message>
            <source>Give it a few words.</source>
            <translation>Ein paar Worte dazu schreiben.</translation>
        </message>
        <message>
            <source>Give it minutes.</source>
            <translation>Minuten angeben.</translation>
        </message>
        <message>
            <source>Give it one, e.g. 'Forty days of scales'.</source>
            <translation>Einen geben, z. B. „Vierzig Tage Tonleitern“.</translation>
        </message>
        <message>
            <source>Give minutes, or 0 for never.</source>
            <translation>Minuten angeben, oder 0 für nie.</translation>
        </message>
        <message>
            <source>Give minutes, or none.</source>
            <translation>Minuten angeben, oder keine.</translation>
        </message>
        <message>
            <source>Give the beginning of its id.</source>
            <translation>Den Anfang der Kennung angeben.</translation>
        </message>
        <message>
            <source>Give the day on which it was played.</source>
            <translation>Den Tag angeben, an dem gespielt wurde.</translation>
        </message>
        <message>
            <source>Give {beats_a_bar} numbers from 0 (left out) to 1 (strong).</source>
            <translation>{beats_a_bar} Zahlen von 0 (ausgelassen) bis 1 (stark) angeben.</translation>
        </message>
        <message>
            <source>Go on in the order.</source>
            <translation>In der Reihenfolge weitergehen.</translation>
        </message>
        <message>
            <source>Go on practising.</source>
            <translation>Weiterüben.</translation>
        </message>
        <message>
            <source>Go on to the next.</source>
            <translation>Zur nächsten weitergehen.</translation>
        </message>
        <message>
            <source>Gone</source>
            <translation>Verschwunden</translation>
        </message>
        <message>
            <source>Good</source>
            <translation>Gut</translation>
        </message>
        <message>
            <source>Guitar</source>
            <translation>Gitarre</translation>
        </message>
        <message>
            <source>Heard at one loudness: A {a_lufs} LUFS, played {a_db} dB softer; B {b_lufs} LUFS, played {b_db} dB softer.</source>
            <translation>Bei gleicher Lautheit gehört: A {a_lufs} LUFS, {a_db} dB leiser gespielt; B {b_lufs} LUFS, {b_db} dB leiser gespielt.</translation>
        </message>
        <message>
            <source>Heard at one loudness: {parts}.</source>
            <translation>Bei gleicher Lautheit gehört: {parts}.</translation>
        </message>
        <message>
            <source>Held {asked} on two days: up to {held_bpm} BPM.</source>
            <translation>An zwei Tagen {asked} gehalten: bis {held_bpm} BPM.</translation>
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
            <source>Horn</source>
            <translation>Horn</translation>
        </message>
        <message>
            <source>Hours from before the journal are a number above 0.</source>
            <translation>Stunden vor dem Journal sind eine Zahl über 0.</translation>
        </message>
        <message>
            <source>How far the A in use lies from 440 Hz. An A estimated from the take hides a take that is flat or sharp throughout.</source>
            <translation>Wie weit das verwendete A von 440 Hz entfernt liegt. Ein aus der Aufnahme geschätztes A verdeckt, dass eine Aufnahme durchgehend zu tief oder zu hoch ist.</translation>
        </message>
        <message>
            <source>How far the loudness falls.</source>
            <translation>Um wie viel die Lautheit fällt.</translation>
        </message>
        <message>
            <source>How far the loudness rises.</source>
            <translation>Um wie viel die Lautheit steigt.</translation>
        </message>
        <message>
            <source>How far the notes lie from the written rhythm at the tempo around them: {percent} % of a beat. Placing their beginnings alone makes {floor} ms.</source>
            <translation>Wie weit die Noten vom notierten Rhythmus im Tempo ihrer Umgebung liegen: {percent} % eines Schlags. Das Bestimmen ihrer Anfänge allein macht {floor} ms aus.</translation>
        </message>
        <message>
            <source>How far the notes lie from their targets on average, whichever way.</source>
            <translation>Wie weit die Noten im Mittel von ihren Zieltönen liegen, gleich in welche Richtung.</translation>
        </message>
        <message>
            <source>Import it as a sound file instead.</source>
            <translation>Stattdessen als Tondatei importieren.</translation>
        </message>
        <message>
            <source>In a stretch that is not as written.</source>
            <translation>In einem Abschnitt, der anders ist als notiert.</translation>
        </message>
        <message>
            <source>In less than {shortest_for_drift_s} seconds no movement of the pitch shows.</source>
            <translation>In weniger als {shortest_for_drift_s} Sekunden zeigt sich keine Bewegung der Tonhöhe.</translation>
        </message>
        <message>
            <source>In the last four weeks: {spent} on {worked_days}.</source>
            <translation>In den letzten vier Wochen: {spent} an {worked_days:dative}.</translation>
        </message>
        <message>
            <source>Install PortAudio (on Debian and Ubuntu: apt install libportaudio2) and start the program again.</source>
            <translation>PortAudio installieren (bei Debian und Ubuntu: apt install libportaudio2) und das Programm neu starten.</translation>
        </message>
        <message>
            <source>Install the newest version and repair with that; nothing was changed.</source>
            <translation>Die neueste Version installieren und damit reparieren; nichts wurde geändert.</translation>
        </message>
        <message>
            <source>Install the newest version.</source>
            <translation>Die neueste Version installieren.</translation>
        </message>
        <message>
            <source>Install the newest version; nothing was changed.</source>
            <translation>Die neueste Version installieren; nichts wurde geändert.</translation>
        </message>
        <message>
            <source>It can be ended instead.</source>
            <translation>Er lässt sich stattdessen beenden.</translation>
        </message>
        <message>
            <source>It can become {allowed}.</source>
            <translation>Möglich ist: {allowed}.</translation>
        </message>
        <message>
            <source>It could not be held against its score.</source>
            <translation>Sie ließ sich nicht gegen ihre Noten halten.</translation>
        </message>
        <message>
            <source>It has bars {numbers} to {numbers2}.</source>
            <translation>Sie haben die Takte {numbers} bis {numbers2}.</translation>
        </message>
        <message>
            <source>It has no bars.</source>
            <translation>Sie haben keine Takte.</translation>
        </message>
        <message>
            <source>It has one.</source>
            <translation>Sie haben eine.</translation>
        </message>
        <message>
            <source>It has {parts}.</source>
            <translation>Sie haben {parts}.</translation>
        </message>
        <message>
            <source>It is not clear which column holds the days and which the minutes.</source>
            <translation>Es ist nicht klar, welche Spalte die Tage und welche die Minuten enthält.</translation>
        </message>
        <message>
            <source>It is not known whether the input set its level automatically; if it did, loud and soft are closer together than they were played.</source>
            <translation>Es ist nicht bekannt, ob der Eingang seinen Pegel selbst stellte; wenn ja, liegen laut und leise näher beieinander, als sie gespielt wurden.</translation>
        </message>
        <message>
            <source>It is not known whether the recorder set the level automatically; if it did, the dynamics cannot be compared.</source>
            <translation>Es ist nicht bekannt, ob das Aufnahmegerät den Pegel selbsttätig eingestellt hat; wenn ja, lässt sich die Dynamik nicht vergleichen.</translation>
        </message>
        <message>
            <source>It speaks of {gone} that this journal does not have.</source>
            <translation>Es ist von {gone} die Rede, was dieses Journal nicht hat.</translation>
        </message>
        <message>
            <source>It was not read. Write it out again from your notation program.</source>
            <translation>Sie wurde nicht gelesen. Im Notenprogramm neu schreiben lassen.</translation>
        </message>
        <message>
            <source>Its day 1 is {start}.</source>
            <translation>Sein Tag 1 ist {start}.</translation>
        </message>
        <message>
            <source>Its level is {lowered_db} dB lower: the clip goes beyond full scale.</source>
            <translation>Der Pegel ist {lowered_db} dB niedriger: Der Clip geht über die Vollaussteuerung hinaus.</translation>
        </message>
        <message>
            <source>Its repeats could not be unfolded; it is read straight through.</source>
            <translation>Die Wiederholungen ließen sich nicht auflösen; es wird geradeaus gelesen.</translation>
        </message>
        <message>
            <source>Its sound can be used without it.</source>
            <translation>Der Ton ist auch ohne das Bild zu gebrauchen.</translation>
        </message>
        <message>
            <source>Its sound goes on without it.</source>
            <translation>Der Ton läuft ohne das Bild weiter.</translation>
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
            <source>Just</source>
            <translation>Rein</translation>
        </message>
        <message>
            <source>Keep it; an ordinary day is what it is there to show.</source>
            <translation>Behalten; einen gewöhnlichen Tag soll sie gerade zeigen.</translation>
        </message>
        <message>
            <source>Keep or add one.</source>
            <translation>Eine behalten oder hinzufügen.</translation>
        </message>
        <message>
            <source>Keep the journal on a disk of this computer.</source>
            <translation>Das Journal auf einer Platte dieses Rechners aufbewahren.</translation>
        </message>
        <message>
            <source>Kept on {kept_on}.</source>
            <translation>Gehalten am {kept_on}.</translation>
        </message>
        <message>
            <source>Least spread seen</source>
            <translation>Kleinste sichtbare Streuung</translation>
        </message>
        <message>
            <source>Least unevenness seen</source>
            <translation>Kleinste sichtbare Ungleich­mäßigkeit</translation>
        </message>
        <message>
            <source>Left out, because the recording in the bundle is missing or changed: {gone}.</source>
            <translation>Weggelassen, weil die Tonaufnahme im Paket fehlt oder verändert ist: {gone}.</translation>
        </message>
        <message>
            <source>Left out, because what was noted of it cannot be read: {gone}. Ask for the bundle once more.</source>
            <translation>Weggelassen, weil nicht zu lesen ist, was dazu notiert war: {gone}. Noch einmal um das Paket bitten.</translation>
        </message>
        <message>
            <source>Left out: talk</source>
            <translation>Ausgelassen: Sprechen</translation>
        </message>
        <message>
            <source>Left out: tuning-up</source>
            <translation>Ausgelassen: Einstimmen</translation>
        </message>
        <message>
            <source>Less than {shortest_playing_s} second of playing.</source>
            <translation>Weniger als {shortest_playing_s} Sekunden Spiel.</translation>
        </message>
        <message>
            <source>Lesson</source>
            <translation>Unterricht</translation>
        </message>
        <message>
            <source>Let the new rule begin today or later; the days before keep their own.</source>
            <translation>Die neue Regel heute oder später beginnen lassen; die Tage davor behalten ihre.</translation>
        </message>
        <message>
            <source>Level of the quietest parts.</source>
            <translation>Pegel der leisesten Teile.</translation>
        </message>
        <message>
            <source>Levelled to {result} LUFS ({gain_db} dB).</source>
            <translation>Auf {result} LUFS angeglichen ({gain_db} dB).</translation>
        </message>
        <message>
            <source>Levels are as recorded: the loudness of {missing} is not known.</source>
            <translation>Pegel wie aufgenommen: Die Lautheit von {missing} ist nicht bekannt.</translation>
        </message>
        <message>
            <source>Likeness of the two shapes, 1 at most: {likeness}.</source>
            <translation>Ähnlichkeit der beiden Verläufe, höchstens 1: {likeness}.</translation>
        </message>
        <message>
            <source>Listen to it instead.</source>
            <translation>Stattdessen anhören.</translation>
        </message>
        <message>
            <source>Listen to the one you have; tomorrow brings the next.</source>
            <translation>Die vorhandene anhören; morgen kommt die nächste.</translation>
        </message>
        <message>
            <source>Listen to the rehearsal.</source>
            <translation>Die Probe anhören.</translation>
        </message>
        <message>
            <source>Look at the list again.</source>
            <translation>Die Liste noch einmal ansehen.</translation>
        </message>
        <message>
            <source>Look at the plan again.</source>
            <translation>Den Plan noch einmal ansehen.</translation>
        </message>
        <message>
            <source>Look at the suggestions again.</source>
            <translation>Die Vorschläge noch einmal ansehen.</translation>
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
            <source>Loudness</source>
            <translation>Lautheit</translation>
        </message>
        <message>
            <source>Loudness against the take</source>
            <translation>Lautheit gegenüber der Aufnahme</translation>
        </message>
        <message>
            <source>Made once more, since the device had failed: {retake_reason}</source>
            <translation>Noch einmal gemacht, da das Gerät versagt hatte: {retake_reason}</translation>
        </message>
        <message>
            <source>Make a new promise.</source>
            <translation>Einen neuen Vorsatz fassen.</translation>
        </message>
        <message>
            <source>Make one first.</source>
            <translation>Zuerst einen machen.</translation>
        </message>
        <message>
            <source>Make room on the disk and record again.</source>
            <translation>Platz auf der Platte schaffen und neu aufnehmen.</translation>
        </message>
        <message>
            <source>Make room on the disk or choose a folder that may be written to.</source>
            <translation>Platz auf der Platte schaffen oder einen Ordner wählen, in den geschrieben werden darf.</translation>
        </message>
        <message>
            <source>Make room on the disk, check that both folders are there, and import it again.</source>
            <translation>Platz auf der Platte schaffen, prüfen, dass beide Ordner da sind, und erneut importieren.</translation>
        </message>
        <message>
            <source>Make room on the disk, then open it again.</source>
            <translation>Platz auf der Platte schaffen, dann erneut öffnen.</translation>
        </message>
        <message>
            <source>Make room on the disk, then try again.</source>
            <translation>Platz auf der Platte schaffen, dann neu versuchen.</translation>
        </message>
        <message>
            <source>Make room on the disk.</source>
            <translation>Platz auf der Platte schaffen.</translation>
        </message>
        <message>
            <source>Make room on the disk; the file stays as it is until then.</source>
            <translation>Platz auf der Platte schaffen; bis dahin bleibt die Datei, wie sie ist.</translation>
        </message>
        <message>
            <source>Mar</source>
            <translation>März</translation>
        </message>
        <message>
            <source>Mark those days as rest, if the promise allows rest.</source>
            <translation>Diese Tage als Ruhetage kennzeichnen, wenn der Vorsatz sie erlaubt.</translation>
        </message>
        <message>
            <source>Mark what you hear, or say that you heard nothing to mark.</source>
            <translation>Anmerken, was zu hören ist, oder sagen, dass nichts anzumerken war.</translation>
        </message>
        <message>
            <source>Marked</source>
            <translation>Angemerkt</translation>
        </message>
        <message>
            <source>Markers need at least one category.</source>
            <translation>Anmerkungen brauchen mindestens eine Kategorie.</translation>
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
            <translation>Mittlere Abwei­chung</translation>
        </message>
        <message>
            <source>Mean deviation {value}</source>
            <translation>Mittlere Abweichung {value}</translation>
        </message>
        <message>
            <source>Mean of the notes of this pitch.{scatter}</source>
            <translation>Mittel der Noten dieser Tonhöhe.{scatter}</translation>
        </message>
        <message>
            <source>Mean of the notes that the score gives to it.</source>
            <translation>Mittel der Noten, denen die Noten ihn zuweisen.</translation>
        </message>
        <message>
            <source>Mean tempo of the take.</source>
            <translation>Mittleres Tempo der Aufnahme.</translation>
        </message>
        <message>
            <source>Measure it first, or choose the title card.</source>
            <translation>Zuerst messen oder die Titelkarte wählen.</translation>
        </message>
        <message>
            <source>Measure it first.</source>
            <translation>Zuerst messen.</translation>
        </message>
        <message>
            <source>Minutes by item</source>
            <translation>Minuten nach Punkt</translation>
        </message>
        <message>
            <source>Minutes were typed for this day meanwhile; they stand for what was heard.</source>
            <translation>Inzwischen wurden Minuten für diesen Tag eingetippt; sie gelten statt des Gehörten.</translation>
        </message>
        <message>
            <source>Mon</source>
            <translation>Mo</translation>
        </message>
        <message>
            <source>Mon {rest}</source>
            <translation>Mo {rest}</translation>
        </message>
        <message>
            <source>Mondays</source>
            <translation>montags</translation>
        </message>
        <message>
            <source>More minutes went along with a {way} mean deviation ({size}). An association only: it does not say which of them brought about the other.</source>
            <translation>Mehr Minuten gingen mit einer {way} mittleren Abweichung einher ({size}). Nur ein Zusammenhang: Er sagt nicht, was davon das andere bewirkte.</translation>
        </message>
        <message>
            <source>More than one take begins with '{text}'.</source>
            <translation>Mehr als eine Aufnahme beginnt mit „{text}“.</translation>
        </message>
        <message>
            <source>Most minutes fall on {weekdays}: {mean_minutes} on average.</source>
            <translation>Die meisten Minuten fallen auf {weekdays}: {mean_minutes} im Mittel.</translation>
        </message>
        <message>
            <source>Move that folder away, then run 'passagework repair'.</source>
            <translation>Diesen Ordner wegräumen, dann „passagework repair“ aufrufen.</translation>
        </message>
        <message>
            <source>Name it {stem}{suffixes}.</source>
            <translation>{stem}{suffixes} nennen.</translation>
        </message>
        <message>
            <source>Name its file, the start of its id, or PASSAGE:DATE:NUMBER.</source>
            <translation>Die Datei nennen, den Anfang der Kennung oder STELLE:DATUM:NUMMER.</translation>
        </message>
        <message>
            <source>Name notes with their octave, such as 'A3' or 'D3 A3'.</source>
            <translation>Noten mit ihrer Oktave nennen, etwa „A3“ oder „D3 A3“.</translation>
        </message>
        <message>
            <source>Name the piece too.</source>
            <translation>Auch das Stück nennen.</translation>
        </message>
        <message>
            <source>Name them; there are {table}.</source>
            <translation>Sie benennen; es gibt {table}.</translation>
        </message>
        <message>
            <source>No beat found here.</source>
            <translation>Hier wurde kein Schlag gefunden.</translation>
        </message>
        <message>
            <source>No clear association of minutes and change ({size}).</source>
            <translation>Kein deutlicher Zusammenhang von Minuten und Veränderung ({size}).</translation>
        </message>
        <message>
            <source>No clear change of the weekly minutes in {looked_at} weeks; one of the latest weeks shows only once it has lasted.</source>
            <translation>Keine klare Änderung der wöchentlichen Minuten in {looked_at} Wochen; eine der letzten Wochen zeigt sich erst, wenn sie angehalten hat.</translation>
        </message>
        <message>
            <source>No loudspeaker, headphones or other sound output was found.</source>
            <translation>Kein Lautsprecher, Kopfhörer oder anderer Tonausgang gefunden.</translation>
        </message>
        <message>
            <source>No marker of yours stands on this take yet.</source>
            <translation>Auf dieser Aufnahme steht noch keine eigene Anmerkung.</translation>
        </message>
        <message>
            <source>No microphone or other sound input was found.</source>
            <translation>Kein Mikrofon und kein anderer Toneingang gefunden.</translation>
        </message>
        <message>
            <source>No note of this run is measurable.</source>
            <translation>Keine Note dieses Durchlaufs ist messbar.</translation>
        </message>
        <message>
            <source>No notes were found in this take.</source>
            <translation>In dieser Aufnahme wurden keine Noten gefunden.</translation>
        </message>
        <message>
            <source>No notes were found.</source>
            <translation>Es wurden keine Noten gefunden.</translation>
        </message>
        <message>
            <source>No one pitch can be told here.</source>
            <translation>Hier ist keine einzelne Tonhöhe zu bestimmen.</translation>
        </message>
        <message>
            <source>No passage has a take or a score yet to tell this one by.</source>
            <translation>Noch keine Stelle hat eine Aufnahme oder Noten, an denen diese zu erkennen wäre.</translation>
        </message>
        <message>
            <source>No rehearsal is running.</source>
            <translation>Es läuft keine Probe.</translation>
        </message>
        <message>
            <source>No single beat stands out; state the beat to measure the tempo.</source>
            <translation>Kein einzelner Schlag sticht hervor; den Schlag angeben, um das Tempo zu messen.</translation>
        </message>
        <message>
            <source>No single pitch sounds here.</source>
            <translation>Hier klingt keine einzelne Tonhöhe.</translation>
        </message>
        <message>
            <source>No take is open.</source>
            <translation>Es ist keine Aufnahme geöffnet.</translation>
        </message>
        <message>
            <source>No take of this passage has both a tempo and an intonation yet.</source>
            <translation>Noch keine Aufnahme dieser Stelle hat sowohl Tempo als auch Intonation.</translation>
        </message>
        <message>
            <source>No take of this passage is measured yet.</source>
            <translation>Noch keine Aufnahme dieser Stelle ist gemessen.</translation>
        </message>
        <message>
            <source>No takes.</source>
            <translation>Keine Aufnahmen.</translation>
        </message>
        <message>
            <source>No tempo was held {asked} on two days yet.</source>
            <translation>Noch kein Tempo wurde an zwei Tagen {asked} gehalten.</translation>
        </message>
        <message>
            <source>Noise floor</source>
            <translation>Grundrauschen</translation>
        </message>
        <message>
            <source>Not as written there</source>
            <translation>Dort anders als notiert</translation>
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
            <source>Not played</source>
            <translation>Nicht gespielt</translation>
        </message>
        <message>
            <source>Not put in: the page holds {most_clips} clips at most.</source>
            <translation>Nicht aufgenommen: Die Seite fasst höchstens {most_clips} Clips.</translation>
        </message>
        <message>
            <source>Notes beside the recordings in {journal} were written by a newer version of the program.</source>
            <translation>Notizen neben den Aufnahmen in {journal} wurden von einer neueren Version des Programms geschrieben.</translation>
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
            <source>Nothing in the take has a pitch.</source>
            <translation>Nichts in der Aufnahme hat eine Tonhöhe.</translation>
        </message>
        <message>
            <source>Nothing is being recorded.</source>
            <translation>Es wird nichts aufgenommen.</translation>
        </message>
        <message>
            <source>Nothing is lost by removing it.</source>
            <translation>Wird sie entfernt, geht nichts verloren.</translation>
        </message>
        <message>
            <source>Nothing is loud enough.</source>
            <translation>Nichts ist laut genug.</translation>
        </message>
        <message>
            <source>Nothing measured stands out that is not marked or put aside already.</source>
            <translation>Nichts Gemessenes fällt auf, das nicht schon angemerkt oder weggelegt ist.</translation>
        </message>
        <message>
            <source>Nothing sounds at one end of it.</source>
            <translation>An einem Ende davon klingt nichts.</translation>
        </message>
        <message>
            <source>Nothing sounds here.</source>
            <translation>Hier klingt nichts.</translation>
        </message>
        <message>
            <source>Nothing sounds in one of the two.</source>
            <translation>In einer der beiden klingt nichts.</translation>
        </message>
        <message>
            <source>Nothing tells yet how '{passage}' goes.</source>
            <translation>Noch sagt nichts, wie „{passage}“ klingt.</translation>
        </message>
        <message>
            <source>Nothing was added to this bundle yet.</source>
            <translation>Zu diesem Paket wurde noch nichts hinzugefügt.</translation>
        </message>
        <message>
            <source>Nothing was measured outside its uncertainty.</source>
            <translation>Nichts wurde außerhalb seiner Unsicherheit gemessen.</translation>
        </message>
        <message>
            <source>Nothing was recorded.</source>
            <translation>Es wurde nichts aufgenommen.</translation>
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
            <source>Oboe</source>
            <translation>Oboe</translation>
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
            <source>Of {source} too little would be kept.</source>
            <translation>Von {source} bliebe zu wenig übrig.</translation>
        </message>
        <message>
            <source>Once more, since the device failed: {after_failure}</source>
            <translation>Noch einmal, da das Gerät versagte: {after_failure}</translation>
        </message>
        <message>
            <source>One column cannot hold both the days and the minutes.</source>
            <translation>Eine Spalte kann nicht Tage und Minuten zugleich enthalten.</translation>
        </message>
        <message>
            <source>One of the recordings contains samples that are not numbers.</source>
            <translation>Eine der Tonaufnahmen enthält Werte, die keine Zahlen sind.</translation>
        </message>
        <message>
            <source>One of the two takes is silent.</source>
            <translation>Eine der beiden Aufnahmen ist still.</translation>
        </message>
        <message>
            <source>One of the two takes sounds for less than {shortest_s} seconds.</source>
            <translation>Eine der beiden Aufnahmen klingt weniger als {shortest_s} Sekunden.</translation>
        </message>
        <message>
            <source>One take holds the same sound twice (in both channels), which reads 3 dB louder.</source>
            <translation>Eine Aufnahme enthält denselben Klang zweimal (in beiden Kanälen), was 3 dB lauter erscheint.</translation>
        </message>
        <message>
            <source>One take of this passage each practice day, kept whatever it is. It shows what an ordinary day sounds like, better than the best of five would.</source>
            <translation>Eine Aufnahme dieser Stelle je Übetag, behalten, wie sie auch ist. Sie zeigt besser als die beste von fünf, wie ein gewöhnlicher Tag klingt.</translation>
        </message>
        <message>
            <source>One take was played with a mute.</source>
            <translation>Eine Aufnahme wurde mit Dämpfer gespielt.</translation>
        </message>
        <message>
            <source>Only one note at a time can be held against a score.</source>
            <translation>Nur eine Note auf einmal lässt sich gegen Noten halten.</translation>
        </message>
        <message>
            <source>Open a bundle first.</source>
            <translation>Zuerst ein Paket öffnen.</translation>
        </message>
        <message>
            <source>Open a take first.</source>
            <translation>Zuerst eine Aufnahme öffnen.</translation>
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
            <source>Open {entry} string</source>
            <translation>Leere {entry}-Saite</translation>
        </message>
        <message>
            <source>Open {string} string</source>
            <translation>Leere {string}-Saite</translation>
        </message>
        <message>
            <source>Other</source>
            <translation>Anderes</translation>
        </message>
        <message>
            <source>Outside every plausible target.</source>
            <translation>Außerhalb jedes möglichen Zieltons.</translation>
        </message>
        <message>
            <source>Over all takes</source>
            <translation>Über alle Aufnahmen</translation>
        </message>
        <message>
            <source>Overdriven: {clipped_samples} at full scale.</source>
            <translation>Übersteuert: {clipped_samples} an der Vollaussteuerung.</translation>
        </message>
        <message>
            <source>Part {number}</source>
            <translation>Stimme {number}</translation>
        </message>
        <message>
            <source>Paused</source>
            <translation>Pause</translation>
        </message>
        <message>
            <source>Paused until {last_day}{why}; nothing is asked of these days.</source>
            <translation>Pause bis {last_day}{why}; für diese Tage wird nichts verlangt.</translation>
        </message>
        <message>
            <source>Peak</source>
            <translation>Spitze</translation>
        </message>
        <message>
            <source>Pettitt's rank test for a change of level (1979) on the minutes of whole weeks, with 999 permutations at 5 %; the place of a change is given with 95 % confidence. It takes the weeks as independent of one another, which practice weeks are not quite.</source>
            <translation>Rangtest nach Pettitt auf eine Änderung des Niveaus (1979) an den Minuten ganzer Wochen, mit 999 Permutationen bei 5 %; der Ort einer Änderung ist mit 95 % Konfidenz angegeben. Er nimmt die Wochen als voneinander unabhängig an, was Übungswochen nicht ganz sind.</translation>
        </message>
        <message>
            <source>Piano</source>
            <translation>Klavier</translation>
        </message>
        <message>
            <source>Place a marker or write a remark first.</source>
            <translation>Zuerst eine Anmerkung setzen oder eine Bemerkung schreiben.</translation>
        </message>
        <message>
            <source>Played in this take only</source>
            <translation>Nur in dieser Aufnahme gespielt</translation>
        </message>
        <message>
            <source>Played once more</source>
            <translation>Noch einmal gespielt</translation>
        </message>
        <message>
            <source>Played with a mute: its loudness is not comparable with takes without one.</source>
            <translation>Mit Dämpfer gespielt: Die Lautheit ist nicht mit Aufnahmen ohne Dämpfer vergleichbar.</translation>
        </message>
        <message>
            <source>Please note</source>
            <translation>Zu beachten</translation>
        </message>
        <message>
            <source>Plucked and quickly repeated notes show no vibrato.</source>
            <translation>Gezupfte und rasch wiederholte Noten zeigen kein Vibrato.</translation>
        </message>
        <message>
            <source>Plug in a microphone or sound card; if one is plugged in, check that the sound server runs and that libasound2-plugins is installed, then look again.</source>
            <translation>Ein Mikrofon oder eine Soundkarte anschließen; ist etwas angeschlossen, prüfen, dass der Tonserver läuft und libasound2-plugins installiert ist, dann neu suchen.</translation>
        </message>
        <message>
            <source>Plug in a microphone, allow it under Settings, Privacy, Microphone, then look again.</source>
            <translation>Ein Mikrofon anschließen, es unter Einstellungen, Datenschutz, Mikrofon erlauben, dann neu suchen.</translation>
        </message>
        <message>
            <source>Plug in a microphone, allow it under System Settings, Privacy and Security, Microphone, then look again.</source>
            <translation>Ein Mikrofon anschließen, es unter Systemeinstellungen, Datenschutz und Sicherheit, Mikrofon erlauben, dann neu suchen.</translation>
        </message>
        <message>
            <source>Plug in headphones or a sound card; if one is plugged in, check that the sound server runs and that libasound2-plugins is installed, then look again.</source>
            <translation>Kopfhörer oder eine Soundkarte anschließen; ist eine angeschlossen, prüfen, dass der Tonserver läuft und libasound2-plugins installiert ist, dann neu suchen.</translation>
        </message>
        <message>
            <source>Plug in headphones or loudspeakers, then look again.</source>
            <translation>Kopfhörer oder Lautsprecher anschließen, dann neu suchen.</translation>
        </message>
        <message>
            <source>Plug in its drive, or choose another folder in the settings.</source>
            <translation>Das Laufwerk anschließen oder in den Einstellungen einen anderen Ordner wählen.</translation>
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
            <source>Plug it in and look again, or choose another device.</source>
            <translation>Anschließen und neu suchen oder ein anderes Gerät wählen.</translation>
        </message>
        <message>
            <source>Plug the disk in again and look there for the part already written.</source>
            <translation>Die Platte wieder anschließen und dort nach dem schon geschriebenen Teil sehen.</translation>
        </message>
        <message>
            <source>Plus-minus: how well the two takes are measured. The word: whether they differ by more than two days of this passage ordinarily do.</source>
            <translation>Plus-minus: wie gut die beiden Aufnahmen gemessen sind. Das Wort: ob sie sich mehr unterscheiden, als es zwei Tage dieser Stelle gewöhnlich tun.</translation>
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
            <source>Promised</source>
            <translation>Vorgenommen</translation>
        </message>
        <message>
            <source>Put one beside it first.</source>
            <translation>Zuerst welche daneben legen.</translation>
        </message>
        <message>
            <source>Put the score beside the passage again.</source>
            <translation>Die Noten wieder zur Stelle legen.</translation>
        </message>
        <message>
            <source>Put the score there again.</source>
            <translation>Die Noten wieder dorthin legen.</translation>
        </message>
        <message>
            <source>Pythagorean</source>
            <translation>pythagoreisch</translation>
        </message>
        <message>
            <source>Pythagorean {value}</source>
            <translation>pythagoreisch {value}</translation>
        </message>
        <message>
            <source>Read it as a sound file.</source>
            <translation>Als Tondatei lesen.</translation>
        </message>
        <message>
            <source>Record another one.</source>
            <translation>Eine weitere aufnehmen.</translation>
        </message>
        <message>
            <source>Record another passage, such as '{others}', or listen to the one you have; tomorrow brings the next.</source>
            <translation>Eine andere Stelle aufnehmen, etwa „{others}“, oder die vorhandene anhören; morgen kommt die nächste.</translation>
        </message>
        <message>
            <source>Record first, then mark.</source>
            <translation>Zuerst aufnehmen, dann markieren.</translation>
        </message>
        <message>
            <source>Record one take of it alone, or put its score beside it.</source>
            <translation>Eine Aufnahme nur davon machen oder die Noten dazu legen.</translation>
        </message>
        <message>
            <source>Recorder</source>
            <translation>Blockflöte</translation>
        </message>
        <message>
            <source>Recording and playing need the PortAudio library, which was not found.</source>
            <translation>Aufnehmen und Abspielen brauchen die PortAudio-Bibliothek; sie wurde nicht gefunden.</translation>
        </message>
        <message>
            <source>Reinstall the program's sounddevice package, which brings PortAudio along.</source>
            <translation>Das Paket sounddevice des Programms neu installieren; es bringt PortAudio mit.</translation>
        </message>
        <message>
            <source>Rename the file.</source>
            <translation>Die Datei umbenennen.</translation>
        </message>
        <message>
            <source>Rest days allowed are a number from 0 on.</source>
            <translation>Erlaubte Ruhetage sind eine Zahl ab 0.</translation>
        </message>
        <message>
            <source>Rest on every day of the week leaves nothing to promise.</source>
            <translation>Ruhe an jedem Wochentag lässt nichts zu versprechen übrig.</translation>
        </message>
        <message>
            <source>Rest the hand before the next ten; stop when anything hurts.</source>
            <translation>Vor den nächsten zehn die Hand ausruhen; aufhören, wenn etwas schmerzt.</translation>
        </message>
        <message>
            <source>Rhythm as written</source>
            <translation>Rhythmus wie notiert</translation>
        </message>
        <message>
            <source>Run 'passagework repair --backups' to see which there are.</source>
            <translation>„passagework repair --backups“ zeigt, welche es gibt.</translation>
        </message>
        <message>
            <source>Run 'passagework repair' (with '--journal FOLDER' unless it is the usual one): it rebuilds the database from the notes beside the recordings.</source>
            <translation>„passagework repair“ ausführen (mit „--journal ORDNER“, wenn es nicht das übliche ist): Es baut die Datenbank aus den Notizen neben den Aufnahmen neu auf.</translation>
        </message>
        <message>
            <source>Run 'passagework repair' (with '--journal FOLDER' unless it is the usual one): it sets the damaged file aside and rebuilds the journal from its backup and the notes beside the recordings.</source>
            <translation>„passagework repair“ ausführen (mit „--journal ORDNER“, wenn es nicht das übliche ist): Es legt die beschädigte Datei beiseite und baut das Journal aus seiner Sicherung und den Notizen neben den Aufnahmen neu auf.</translation>
        </message>
        <message>
            <source>Run 'passagework repair', or leave its day out.</source>
            <translation>„passagework repair“ ausführen oder diesen Tag weglassen.</translation>
        </message>
        <message>
            <source>Running notes</source>
            <translation>Laufende Noten</translation>
        </message>
        <message>
            <source>Rushes</source>
            <translation>Eilt</translation>
        </message>
        <message>
            <source>Samples at full scale; more than a few are heard as distortion.</source>
            <translation>Werte an der Vollaussteuerung; mehr als ein paar sind als Verzerrung zu hören.</translation>
        </message>
        <message>
            <source>Sat</source>
            <translation>Sa</translation>
        </message>
        <message>
            <source>Sat {rest}</source>
            <translation>Sa {rest}</translation>
        </message>
        <message>
            <source>Saturdays</source>
            <translation>samstags</translation>
        </message>
        <message>
            <source>Save or export the minutes as CSV, then choose that.</source>
            <translation>Speichere oder exportiere die Minuten als CSV und wähle dann diese Datei.</translation>
        </message>
        <message>
            <source>Saxophone</source>
            <translation>Saxofon</translation>
        </message>
        <message>
            <source>Say how many minutes there are.</source>
            <translation>Sagen, wie viele Minuten es sind.</translation>
        </message>
        <message>
            <source>Say on which day, then file it.</source>
            <translation>Sagen, an welchem Tag, dann ablegen.</translation>
        </message>
        <message>
            <source>Say until when you played, then go on.</source>
            <translation>Sagen, bis wann gespielt wurde, dann weitermachen.</translation>
        </message>
        <message>
            <source>Say what the device did.</source>
            <translation>Sagen, was das Gerät tat.</translation>
        </message>
        <message>
            <source>Scales</source>
            <translation>Tonleitern</translation>
        </message>
        <message>
            <source>Sep</source>
            <translation>Sept</translation>
        </message>
        <message>
            <source>Several notes sound at once through most of the take, as on a piano, so there is no single line to measure.</source>
            <translation>Durch den größten Teil der Aufnahme klingen mehrere Töne zugleich, wie beim Klavier, darum gibt es keine einzelne Linie zu messen.</translation>
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
            <source>Short, fairly loud sweeps are played: take headphones off your ears first.</source>
            <translation>Kurze, recht laute Gleittöne werden gespielt: Kopfhörer vorher von den Ohren nehmen.</translation>
        </message>
        <message>
            <source>Shorten or leave out another line first, or give the plan more minutes.</source>
            <translation>Zuerst eine andere Zeile kürzen oder weglassen, oder dem Plan mehr Minuten geben.</translation>
        </message>
        <message>
            <source>Shown, and in no average.</source>
            <translation>Gezeigt, und in keinem Mittel.</translation>
        </message>
        <message>
            <source>Slower than the take's mean tempo by so much.</source>
            <translation>Um so viel langsamer als das mittlere Tempo der Aufnahme.</translation>
        </message>
        <message>
            <source>Something else may sound with this note.</source>
            <translation>Mit dieser Note klingt vielleicht noch etwas anderes.</translation>
        </message>
        <message>
            <source>Something else sounds in this take, and the player's own line cannot be told apart.</source>
            <translation>In dieser Aufnahme klingt noch etwas anderes, und die eigene Linie ist davon nicht zu trennen.</translation>
        </message>
        <message>
            <source>Something is not there{where}: {doing}.</source>
            <translation>Etwas ist nicht da{where}: {doing}.</translation>
        </message>
        <message>
            <source>Spread</source>
            <translation>Streuung</translation>
        </message>
        <message>
            <source>Spread of the intervals inside runs of equally long notes; less is more even.</source>
            <translation>Streuung der Abstände in Läufen gleich langer Noten; weniger ist gleichmäßiger.</translation>
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
            <source>Start a recording first.</source>
            <translation>Zuerst eine Aufnahme beginnen.</translation>
        </message>
        <message>
            <source>Start it first.</source>
            <translation>Zuerst starten.</translation>
        </message>
        <message>
            <source>Start one.</source>
            <translation>Eine beginnen.</translation>
        </message>
        <message>
            <source>Steadiness is not judged: the tempo of this passage is meant to move.</source>
            <translation>Gleichmäßigkeit wird nicht beurteilt: Das Tempo dieser Stelle soll sich bewegen.</translation>
        </message>
        <message>
            <source>Stop it first.</source>
            <translation>Zuerst beenden.</translation>
        </message>
        <message>
            <source>Stop recording and leave the level meter first.</source>
            <translation>Zuerst die Aufnahme beenden und die Pegelanzeige verlassen.</translation>
        </message>
        <message>
            <source>Stop the recording or the level first.</source>
            <translation>Zuerst die Aufnahme oder die Pegelprüfung beenden.</translation>
        </message>
        <message>
            <source>String</source>
            <translation>Saite</translation>
        </message>
        <message>
            <source>Sun</source>
            <translation>So</translation>
        </message>
        <message>
            <source>Sun {rest}</source>
            <translation>So {rest}</translation>
        </message>
        <message>
            <source>Sundays</source>
            <translation>sonntags</translation>
        </message>
        <message>
            <source>Swap the two dates.</source>
            <translation>Die beiden Daten tauschen.</translation>
        </message>
        <message>
            <source>Swap the two days.</source>
            <translation>Die beiden Tage tauschen.</translation>
        </message>
        <message>
            <source>Take a MusicXML file (.musicxml, .mxl, .xml) or a MIDI file (.mid).</source>
            <translation>Eine MusicXML-Datei (.musicxml, .mxl, .xml) oder MIDI-Datei (.mid) nehmen.</translation>
        </message>
        <message>
            <source>Take another file or another part.</source>
            <translation>Eine andere Datei oder eine andere Stimme nehmen.</translation>
        </message>
        <message>
            <source>Take one away before adding one.</source>
            <translation>Erst einen wegnehmen, dann einen hinzufügen.</translation>
        </message>
        <message>
            <source>Take the part alone.</source>
            <translation>Nur die Stimme nehmen.</translation>
        </message>
        <message>
            <source>Take {name} was chosen as the best of several ({attempts} attempts).</source>
            <translation>Aufnahme {name} wurde als beste von mehreren gewählt ({attempts} Versuche).</translation>
        </message>
        <message>
            <source>Take {name} was made without retakes</source>
            <translation>Aufnahme {name} wurde ohne Wiederholung gemacht</translation>
        </message>
        <message>
            <source>Take {name} was made without retakes.</source>
            <translation>Aufnahme {name} entstand ohne zweiten Versuch.</translation>
        </message>
        <message>
            <source>Taken for the open string; if it was stopped: {readings} cents.</source>
            <translation>Als leere Saite genommen; wenn sie gegriffen war: {readings} Cent.</translation>
        </message>
        <message>
            <source>Takes</source>
            <translation>Aufnahmen</translation>
        </message>
        <message>
            <source>Tempo</source>
            <translation>Tempo</translation>
        </message>
        <message>
            <source>Tendency</source>
            <translation>Tendenz</translation>
        </message>
        <message>
            <source>Tendency {value}</source>
            <translation>Tendenz {value}</translation>
        </message>
        <message>
            <source>That assignment is not there.</source>
            <translation>Diese Aufgabe ist nicht da.</translation>
        </message>
        <message>
            <source>That column is not in the file.</source>
            <translation>Diese Spalte ist nicht in der Datei.</translation>
        </message>
        <message>
            <source>That does not fit into the time since the clock was started.</source>
            <translation>Das passt nicht in die Zeit seit dem Start der Uhr.</translation>
        </message>
        <message>
            <source>That has changed meanwhile.</source>
            <translation>Das hat sich inzwischen geändert.</translation>
        </message>
        <message>
            <source>That is the same take twice.</source>
            <translation>Das ist zweimal dieselbe Aufnahme.</translation>
        </message>
        <message>
            <source>That item is not there.</source>
            <translation>Dieser Punkt ist nicht da.</translation>
        </message>
        <message>
            <source>That line is not in today's plan.</source>
            <translation>Diese Zeile steht nicht im heutigen Plan.</translation>
        </message>
        <message>
            <source>That marker belongs to another passage or to a later take.</source>
            <translation>Diese Anmerkung gehört zu einer anderen Stelle oder einer späteren Aufnahme.</translation>
        </message>
        <message>
            <source>That marker is not there any more.</source>
            <translation>Diese Anmerkung ist nicht mehr da.</translation>
        </message>
        <message>
            <source>That passage is not there.</source>
            <translation>Diese Stelle ist nicht da.</translation>
        </message>
        <message>
            <source>That promise has no number for this day.</source>
            <translation>Dieser Vorsatz hat keine Nummer für diesen Tag.</translation>
        </message>
        <message>
            <source>That promise is not there.</source>
            <translation>Dieser Vorsatz ist nicht da.</translation>
        </message>
        <message>
            <source>That question is not there.</source>
            <translation>Diese Frage ist nicht da.</translation>
        </message>
        <message>
            <source>That question was answered already.</source>
            <translation>Diese Frage wurde schon beantwortet.</translation>
        </message>
        <message>
            <source>That suggestion is not there.</source>
            <translation>Dieser Vorschlag ist nicht da.</translation>
        </message>
        <message>
            <source>That take is not a measured one of this passage.</source>
            <translation>Das ist keine gemessene Aufnahme dieser Stelle.</translation>
        </message>
        <message>
            <source>That take is not there.</source>
            <translation>Diese Aufnahme ist nicht da.</translation>
        </message>
        <message>
            <source>That take was not recorded with this program.</source>
            <translation>Diese Aufnahme wurde nicht mit diesem Programm gemacht.</translation>
        </message>
        <message>
            <source>That would be {minutes_planned} minutes, and there are {minutes_available}.</source>
            <translation>Das wären {minutes_planned} Minuten, und es sind {minutes_available} da.</translation>
        </message>
        <message>
            <source>The A was estimated from this take, so it hides a take that is sharp or flat throughout.</source>
            <translation>Das A wurde aus dieser Aufnahme geschätzt und verdeckt darum, ob sie durchgehend zu hoch oder zu tief ist.</translation>
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
            <source>The FLAC copy of {pcm_path} differs from the take and was discarded.</source>
            <translation>Die FLAC-Kopie von {pcm_path} weicht von der Aufnahme ab und wurde verworfen.</translation>
        </message>
        <message>
            <source>The accents do not fit the bar.</source>
            <translation>Die Betonungen passen nicht in den Takt.</translation>
        </message>
        <message>
            <source>The assignment says nothing.</source>
            <translation>Die Aufgabe sagt nichts.</translation>
        </message>
        <message>
            <source>The assignment would be due on {due_on}, before it was set.</source>
            <translation>Die Aufgabe wäre am {due_on} fällig, bevor sie gestellt wurde.</translation>
        </message>
        <message>
            <source>The beats of this run cannot be told.</source>
            <translation>Die Schläge dieses Durchlaufs sind nicht zu bestimmen.</translation>
        </message>
        <message>
            <source>The break would end before it begins.</source>
            <translation>Die Pause würde enden, bevor sie beginnt.</translation>
        </message>
        <message>
            <source>The bundle brought {takes_new} and {markers_new}; {takes_known} were here already.</source>
            <translation>Das Paket brachte {takes_new} und {markers_new}; {takes_known} waren schon da.</translation>
        </message>
        <message>
            <source>The bundle needs {total} MB, and the disk has less.</source>
            <translation>Das Paket braucht {total} MB, und die Platte hat weniger.</translation>
        </message>
        <message>
            <source>The clip says when but not in which time zone: here it was {recorded_at}, near the turn of the day. Was it {days} or {days2}?</source>
            <translation>Der Clip sagt, wann, aber nicht, in welcher Zeitzone: Hier war es {recorded_at}, nahe am Tageswechsel. War es der {days} oder der {days2}?</translation>
        </message>
        <message>
            <source>The clip would be shorter than half a second.</source>
            <translation>Der Clip wäre kürzer als eine halbe Sekunde.</translation>
        </message>
        <message>
            <source>The clip would be {end_s} s long, and {longest_s} s is the most.</source>
            <translation>Der Clip wäre {end_s} s lang, und {longest_s} s sind das Höchste.</translation>
        </message>
        <message>
            <source>The clip would begin outside the take.</source>
            <translation>Der Clip würde außerhalb der Aufnahme beginnen.</translation>
        </message>
        <message>
            <source>The clock has been running since {since} on {since2}, and {why}: how long did you play?</source>
            <translation>Die Uhr läuft seit {since} am {since2}, und {why}: Wie lange wurde gespielt?</translation>
        </message>
        <message>
            <source>The clock is not running.</source>
            <translation>Die Uhr läuft nicht.</translation>
        </message>
        <message>
            <source>The clock was not forgotten.</source>
            <translation>Die Uhr wurde nicht vergessen.</translation>
        </message>
        <message>
            <source>The computer or the program was put to sleep; the take up to then is kept.</source>
            <translation>Rechner oder Programm wurden schlafen gelegt; die Aufnahme bis dahin bleibt erhalten.</translation>
        </message>
        <message>
            <source>The copy of {source} differs from the original and was discarded.</source>
            <translation>Die Kopie von {source} weicht vom Original ab und wurde verworfen.</translation>
        </message>
        <message>
            <source>The day turns at a full hour from 0 to 11.</source>
            <translation>Der Tag wechselt zu einer vollen Stunde von 0 bis 11.</translation>
        </message>
        <message>
            <source>The delay from output to input does not hold still.</source>
            <translation>Die Verzögerung vom Ausgang zum Eingang bleibt nicht gleich.</translation>
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
            <source>The disk reported '{reason}'{where}: {doing}.</source>
            <translation>Die Platte meldete „{reason}“{where}: {doing}.</translation>
        </message>
        <message>
            <source>The disk that holds the journal in {folder} is full, so nothing was changed.</source>
            <translation>Die Platte mit dem Journal in {folder} ist voll, darum wurde nichts geändert.</translation>
        </message>
        <message>
            <source>The disk that holds the journal in {folder} reported an error ({error}).</source>
            <translation>Die Platte mit dem Journal in {folder} meldete einen Fehler ({error}).</translation>
        </message>
        <message>
            <source>The file has a header and no rows.</source>
            <translation>Die Datei hat eine Kopfzeile und keine Zeilen.</translation>
        </message>
        <message>
            <source>The file is no table that can be read ({problem}).</source>
            <translation>Die Datei ist keine lesbare Tabelle ({problem}).</translation>
        </message>
        <message>
            <source>The file is no table with a column of days and one of minutes.</source>
            <translation>Die Datei ist keine Tabelle mit einer Spalte für Tage und einer für Minuten.</translation>
        </message>
        <message>
            <source>The file system that holds the journal in {journal} knows no locks.</source>
            <translation>Das Dateisystem, auf dem das Journal in {journal} liegt, kennt keine Sperren.</translation>
        </message>
        <message>
            <source>The first day lies after the last.</source>
            <translation>Der erste Tag liegt nach dem letzten.</translation>
        </message>
        <message>
            <source>The folder of the take went away, and the take with it.</source>
            <translation>Der Ordner der Aufnahme ist verschwunden, und die Aufnahme mit ihm.</translation>
        </message>
        <message>
            <source>The folder of the take went away; the take up to then is kept.</source>
            <translation>Der Ordner der Aufnahme verschwand; die Aufnahme bis dahin bleibt erhalten.</translation>
        </message>
        <message>
            <source>The folder of the take went away; the take up to then is now {path}.</source>
            <translation>Der Ordner der Aufnahme ist verschwunden; die Aufnahme bis dahin liegt jetzt in {path}.</translation>
        </message>
        <message>
            <source>The input '{device}'</source>
            <translation>Der Eingang „{device}“</translation>
        </message>
        <message>
            <source>The input '{device}' has no channel {first_channel}.</source>
            <translation>Der Eingang „{device}“ hat keinen Kanal {first_channel}.</translation>
        </message>
        <message>
            <source>The input '{name}' has no channel {channel} any more; its first channel is recorded.</source>
            <translation>Der Eingang „{name}“ hat keinen Kanal {channel} mehr; sein erster Kanal wird aufgenommen.</translation>
        </message>
        <message>
            <source>The input was silent to the last bit for a while, as if muted.</source>
            <translation>Der Eingang war eine Weile bis aufs letzte Bit still, als wäre er stumm geschaltet.</translation>
        </message>
        <message>
            <source>The input's level was probably set automatically: its noise rises in the pauses.</source>
            <translation>Der Eingang stellte seinen Pegel wahrscheinlich selbst: Sein Rauschen steigt in den Pausen.</translation>
        </message>
        <message>
            <source>The journal in {folder} cannot be read.</source>
            <translation>Das Journal in {folder} lässt sich nicht lesen.</translation>
        </message>
        <message>
            <source>The journal in {folder} cannot be written to.</source>
            <translation>In das Journal in {folder} lässt sich nicht schreiben.</translation>
        </message>
        <message>
            <source>The journal in {folder} is already open in another copy of the program.</source>
            <translation>Das Journal in {folder} ist schon in einem zweiten Programmfenster geöffnet.</translation>
        </message>
        <message>
            <source>The journal in {journal} has recordings but its database is missing.</source>
            <translation>Das Journal in {journal} hat Aufnahmen, aber seine Datenbank fehlt.</translation>
        </message>
        <message>
            <source>The journal's database {database} is damaged; the recordings are untouched.</source>
            <translation>Die Datenbank {database} des Journals ist beschädigt; die Aufnahmen sind unberührt.</translation>
        </message>
        <message>
            <source>The journal's database {database} was made by a newer version of the program.</source>
            <translation>Die Datenbank {database} des Journals wurde von einer neueren Version des Programms gemacht.</translation>
        </message>
        <message>
            <source>The journal's own folder cannot be watched.</source>
            <translation>Der Ordner des Journals selbst lässt sich nicht überwachen.</translation>
        </message>
        <message>
            <source>The last 7 days hold {minutes}, against {mean_before} a week in the four weeks before. A sudden rise strains the body: take breaks, go up slowly, and stop where it hurts. If it goes on hurting, see a doctor or therapist who knows musicians.</source>
            <translation>Die letzten 7 Tage enthalten {minutes}, gegen {mean_before} in der Woche in den vier Wochen davor. Ein plötzlicher Anstieg belastet den Körper: Pausen machen, langsam steigern, und aufhören, wo es schmerzt. Wenn es weiter schmerzt, zu einer Ärztin, einem Arzt oder einer Therapiepraxis gehen, die sich mit Musizierenden auskennt.</translation>
        </message>
        <message>
            <source>The last day lies before the first.</source>
            <translation>Der letzte Tag liegt vor dem ersten.</translation>
        </message>
        <message>
            <source>The level was set automatically, so dynamics are not compared.</source>
            <translation>Der Pegel wurde automatisch geregelt, darum wird die Dynamik nicht verglichen.</translation>
        </message>
        <message>
            <source>The loudness of one of the takes is not measurable.</source>
            <translation>Die Lautheit einer der Aufnahmen ist nicht messbar.</translation>
        </message>
        <message>
            <source>The marker would end at {end_s} s, before it begins at {start_s} s.</source>
            <translation>Die Anmerkung würde bei {end_s} s enden, bevor sie bei {start_s} s beginnt.</translation>
        </message>
        <message>
            <source>The name {path} holds bytes that are no text.</source>
            <translation>Der Name {path} enthält Bytes, die kein Text sind.</translation>
        </message>
        <message>
            <source>The next day kept begins a new run</source>
            <translation>Der nächste gehaltene Tag beginnt eine neue Folge</translation>
        </message>
        <message>
            <source>The next step is {next_bpm} BPM</source>
            <translation>Der nächste Schritt ist {next_bpm} BPM</translation>
        </message>
        <message>
            <source>The next step is {value} BPM, the target {rest}.</source>
            <translation>Der nächste Schritt ist {value} BPM, das Ziel {rest}.</translation>
        </message>
        <message>
            <source>The note before or after sounds together with it.</source>
            <translation>Die Note davor oder danach klingt mit ihr zusammen.</translation>
        </message>
        <message>
            <source>The note has no steady part long enough to measure.</source>
            <translation>Die Note hat keinen ruhigen Teil, der zum Messen lang genug ist.</translation>
        </message>
        <message>
            <source>The note holds too few turns of its vibrato.</source>
            <translation>Die Note enthält zu wenige Schwingungen ihres Vibratos.</translation>
        </message>
        <message>
            <source>The note is too short to tell vibrato.</source>
            <translation>Die Note ist zu kurz, um Vibrato zu erkennen.</translation>
        </message>
        <message>
            <source>The note lies so far between two notes that its target is unclear.</source>
            <translation>Die Note liegt so weit zwischen zwei Tönen, dass ihr Zielton unklar ist.</translation>
        </message>
        <message>
            <source>The notes are held against another A.</source>
            <translation>Die Noten werden gegen ein anderes A gehalten.</translation>
        </message>
        <message>
            <source>The notes are held against another temperament.</source>
            <translation>Die Noten werden gegen eine andere Stimmung gehalten.</translation>
        </message>
        <message>
            <source>The notes do not follow a beat near {pulse_bpm} BPM.</source>
            <translation>Die Noten folgen keinem Schlag nahe {pulse_bpm} BPM.</translation>
        </message>
        <message>
            <source>The notes do not follow the reference beats.</source>
            <translation>Die Noten folgen den Vergleichsschlägen nicht.</translation>
        </message>
        <message>
            <source>The other take is not read yet.</source>
            <translation>Die andere Aufnahme ist noch nicht gelesen.</translation>
        </message>
        <message>
            <source>The output '{device}' would not open ({error}).</source>
            <translation>Der Ausgang „{device}“ ließ sich nicht öffnen ({error}).</translation>
        </message>
        <message>
            <source>The output '{name}' would not open ({error}).</source>
            <translation>Der Ausgang „{name}“ ließ sich nicht öffnen ({error}).</translation>
        </message>
        <message>
            <source>The part from {part} of {path}, which is kept whole as {relative}.</source>
            <translation>Der Teil ab {part} von {path}; die ganze Datei bleibt als {relative} erhalten.</translation>
        </message>
        <message>
            <source>The passage lasts under {least_s} seconds, too short to be found again.</source>
            <translation>Die Stelle dauert unter {least_s} Sekunden, zu kurz, um wiedergefunden zu werden.</translation>
        </message>
        <message>
            <source>The passage was not found in this recording.</source>
            <translation>Die Stelle wurde in dieser Tonaufnahme nicht gefunden.</translation>
        </message>
        <message>
            <source>The picture of {path} {what}.</source>
            <translation>Das Bild von {path} {what}.</translation>
        </message>
        <message>
            <source>The picture stopped.</source>
            <translation>Das Bild blieb stehen.</translation>
        </message>
        <message>
            <source>The pitch of the note does not settle.</source>
            <translation>Die Tonhöhe der Note kommt nicht zur Ruhe.</translation>
        </message>
        <message>
            <source>The pitch only follows a wobble of the level, as a wolf note or a beat does.</source>
            <translation>Die Tonhöhe folgt nur einem Schwanken des Pegels, wie bei einem Wolfston oder einer Schwebung.</translation>
        </message>
        <message>
            <source>The practice day cannot turn at {day_turn_hour}:00.</source>
            <translation>Der Übetag kann nicht um {day_turn_hour}:00 wechseln.</translation>
        </message>
        <message>
            <source>The program ended while recording; the take up to then is kept.</source>
            <translation>Das Programm endete während der Aufnahme; was bis dahin klang, bleibt erhalten.</translation>
        </message>
        <message>
            <source>The promise would end on {end}, before its rule begins on {since}.</source>
            <translation>Der Vorsatz würde am {end} enden, bevor seine Regel am {since} beginnt.</translation>
        </message>
        <message>
            <source>The quiet moments lie {step_db} dB {way}: the input was probably set differently.</source>
            <translation>Die leisen Augenblicke liegen {step_db} dB {way}: Der Eingang war wahrscheinlich anders eingestellt.</translation>
        </message>
        <message>
            <source>The recording contains samples that are not numbers.</source>
            <translation>Die Tonaufnahme enthält Werte, die keine Zahlen sind.</translation>
        </message>
        <message>
            <source>The recording is kept as it is.</source>
            <translation>Die Aufnahme bleibt, wie sie ist.</translation>
        </message>
        <message>
            <source>The recording is kept; check the disk and try again.</source>
            <translation>Die Aufnahme bleibt; die Platte prüfen und erneut versuchen.</translation>
        </message>
        <message>
            <source>The recording is kept; make room on the disk and try again.</source>
            <translation>Die Aufnahme bleibt; Platz auf der Platte schaffen und erneut versuchen.</translation>
        </message>
        <message>
            <source>The recording is overdriven.</source>
            <translation>Die Aufnahme ist übersteuert.</translation>
        </message>
        <message>
            <source>The recording {file} is missing.</source>
            <translation>Die Tonaufnahme {file} fehlt.</translation>
        </message>
        <message>
            <source>The remark is empty.</source>
            <translation>Die Bemerkung ist leer.</translation>
        </message>
        <message>
            <source>The reply brought nothing new.</source>
            <translation>Die Antwort brachte nichts Neues.</translation>
        </message>
        <message>
            <source>The reply brought {parts}.</source>
            <translation>Die Antwort brachte {parts}.</translation>
        </message>
        <message>
            <source>The sample rate is too low for this instrument.</source>
            <translation>Die Abtastrate ist für dieses Instrument zu niedrig.</translation>
        </message>
        <message>
            <source>The sample rate is under 8 kHz.</source>
            <translation>Die Abtastrate liegt unter 8 kHz.</translation>
        </message>
        <message>
            <source>The sample rate is under {lowest_rate_hz} kHz.</source>
            <translation>Die Abtastrate liegt unter {lowest_rate_hz} kHz.</translation>
        </message>
        <message>
            <source>The score has no bars {spans}.</source>
            <translation>Die Noten haben keine Takte {spans}.</translation>
        </message>
        <message>
            <source>The score has no notes here.</source>
            <translation>Hier haben die Noten keine Töne.</translation>
        </message>
        <message>
            <source>The score has no notes.</source>
            <translation>Die Noten enthalten keine Töne.</translation>
        </message>
        <message>
            <source>The score has no part number {part}.</source>
            <translation>Die Noten haben keine Stimme Nummer {part}.</translation>
        </message>
        <message>
            <source>The score {value} is not in the journal any more.</source>
            <translation>Die Noten {value} sind nicht mehr im Journal.</translation>
        </message>
        <message>
            <source>The signed mean: plus is sharp, minus is flat.</source>
            <translation>Das Mittel mit Vorzeichen: plus ist zu hoch, minus zu tief.</translation>
        </message>
        <message>
            <source>The silence that ends a take lasts 1 to 120 seconds.</source>
            <translation>Die Stille, die eine Aufnahme beendet, dauert 1 bis 120 Sekunden.</translation>
        </message>
        <message>
            <source>The sound devices do not run.</source>
            <translation>Die Tongeräte laufen nicht.</translation>
        </message>
        <message>
            <source>The sound input</source>
            <translation>Der Toneingang</translation>
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
            <source>The sound input went away; the minutes up to then are kept in mind.</source>
            <translation>Der Toneingang ist verschwunden; die Minuten bis dahin sind gemerkt.</translation>
        </message>
        <message>
            <source>The sound input went away; the take up to then is kept.</source>
            <translation>Der Toneingang verschwand; die Aufnahme bis dahin bleibt erhalten.</translation>
        </message>
        <message>
            <source>The sound output does not run.</source>
            <translation>Der Tonausgang läuft nicht.</translation>
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
            <source>The take cannot be written to {parent} ({strerror}).</source>
            <translation>Die Aufnahme lässt sich nicht nach {parent} schreiben ({strerror}).</translation>
        </message>
        <message>
            <source>The take does not follow the score of its passage.</source>
            <translation>Die Aufnahme folgt den Noten ihrer Stelle nicht.</translation>
        </message>
        <message>
            <source>The take does not seem to be what is written.</source>
            <translation>Die Aufnahme scheint nicht das Notierte zu sein.</translation>
        </message>
        <message>
            <source>The take had {source_words}; it was rounded to 24 bit.</source>
            <translation>Die Aufnahme hatte {source_words}; sie wurde auf 24 Bit gerundet.</translation>
        </message>
        <message>
            <source>The take holds samples that are not numbers.</source>
            <translation>Die Aufnahme enthält Werte, die keine Zahlen sind.</translation>
        </message>
        <message>
            <source>The take is empty.</source>
            <translation>Die Aufnahme ist leer.</translation>
        </message>
        <message>
            <source>The take is no longer there.</source>
            <translation>Die Aufnahme ist nicht mehr da.</translation>
        </message>
        <message>
            <source>The take is shorter than {momentary_s} seconds.</source>
            <translation>Die Aufnahme ist kürzer als {momentary_s} Sekunden.</translation>
        </message>
        <message>
            <source>The take is silent.</source>
            <translation>Die Aufnahme ist still.</translation>
        </message>
        <message>
            <source>The take is too short for it.</source>
            <translation>Die Aufnahme ist dafür zu kurz.</translation>
        </message>
        <message>
            <source>The take is too short to hold a pitch.</source>
            <translation>Die Aufnahme ist zu kurz für eine Tonhöhe.</translation>
        </message>
        <message>
            <source>The target is reached.</source>
            <translation>Das Ziel ist erreicht.</translation>
        </message>
        <message>
            <source>The tempo of one of the takes is not measurable.</source>
            <translation>Das Tempo einer der Aufnahmen ist nicht messbar.</translation>
        </message>
        <message>
            <source>The test sound was not heard by the input.</source>
            <translation>Der Eingang hat den Prüfton nicht gehört.</translation>
        </message>
        <message>
            <source>The two takes do not seem to be the same passage.</source>
            <translation>Die beiden Aufnahmen scheinen nicht dieselbe Stelle zu sein.</translation>
        </message>
        <message>
            <source>The two takes sound together for too short a time to have a shape.</source>
            <translation>Die beiden Aufnahmen klingen zu kurz gemeinsam, um einen Verlauf zu haben.</translation>
        </message>
        <message>
            <source>The watched folder {folder} is not there.</source>
            <translation>Der überwachte Ordner {folder} ist nicht da.</translation>
        </message>
        <message>
            <source>There are {table}.</source>
            <translation>Es gibt {table}.</translation>
        </message>
        <message>
            <source>There are {titles}.</source>
            <translation>Es gibt {titles}.</translation>
        </message>
        <message>
            <source>There are: {known}.</source>
            <translation>Es gibt: {known}.</translation>
        </message>
        <message>
            <source>There is a break from {first_day} to {last_day} already.</source>
            <translation>Es gibt schon eine Pause vom {first_day} bis zum {last_day}.</translation>
        </message>
        <message>
            <source>There is a category '{kept}' already.</source>
            <translation>Es gibt schon eine Kategorie „{kept}“.</translation>
        </message>
        <message>
            <source>There is a passage '{other}' already.</source>
            <translation>Es gibt schon eine Stelle „{other}“.</translation>
        </message>
        <message>
            <source>There is no backup '{text}' in {backups}.</source>
            <translation>Es gibt keine Sicherung „{text}“ in {backups}.</translation>
        </message>
        <message>
            <source>There is no column '{name}'.</source>
            <translation>Es gibt keine Spalte „{name}“.</translation>
        </message>
        <message>
            <source>There is no folder {folder}.</source>
            <translation>Es gibt keinen Ordner {folder}.</translation>
        </message>
        <message>
            <source>There is no folder {path}.</source>
            <translation>Es gibt keinen Ordner {path}.</translation>
        </message>
        <message>
            <source>There is no journal in {journal}.</source>
            <translation>In {journal} ist kein Journal.</translation>
        </message>
        <message>
            <source>There is no note to show: the take is not measured, or nothing could be.</source>
            <translation>Es gibt keine Note zu zeigen: Die Aufnahme ist nicht gemessen, oder nichts war messbar.</translation>
        </message>
        <message>
            <source>There is no passage '{text}'.</source>
            <translation>Es gibt keine Stelle „{text}“.</translation>
        </message>
        <message>
            <source>There is no plan for today.</source>
            <translation>Für heute gibt es keinen Plan.</translation>
        </message>
        <message>
            <source>There is no promise '{text}'.</source>
            <translation>Es gibt keinen Vorsatz „{text}“.</translation>
        </message>
        <message>
            <source>There is no run of equally long, short notes.</source>
            <translation>Es gibt keinen Lauf gleich langer, kurzer Noten.</translation>
        </message>
        <message>
            <source>There is no take '{text}' in this journal.</source>
            <translation>Es gibt keine Aufnahme „{text}“ in diesem Journal.</translation>
        </message>
        <message>
            <source>There is no take in these days.</source>
            <translation>In diesen Tagen gibt es keine Aufnahme.</translation>
        </message>
        <message>
            <source>There is no {figure} in {mode}.</source>
            <translation>{figure} gibt es nicht in {mode}.</translation>
        </message>
        <message>
            <source>There is nothing called '{text}' to practise.</source>
            <translation>Es gibt nichts zu üben, das „{text}“ heißt.</translation>
        </message>
        <message>
            <source>There is nothing to keep in it.</source>
            <translation>Darin ist nichts zu behalten.</translation>
        </message>
        <message>
            <source>There is nothing to play.</source>
            <translation>Es gibt nichts abzuspielen.</translation>
        </message>
        <message>
            <source>There is room for {most_names} names of days.</source>
            <translation>Es ist Platz für {most_names} Namen von Tagen.</translation>
        </message>
        <message>
            <source>There is still time to play today, if you like; a few minutes count too.</source>
            <translation>Heute ist noch Zeit zu spielen, wenn Lust da ist; auch ein paar Minuten zählen.</translation>
        </message>
        <message>
            <source>There is {how} marker '{text}' in this passage.</source>
            <translation>In dieser Stelle gibt es {how} Anmerkung „{text}“.</translation>
        </message>
        <message>
            <source>There is {titles}.</source>
            <translation>Es gibt {titles}.</translation>
        </message>
        <message>
            <source>They spread by {spread} cents.</source>
            <translation>Sie streuen um {spread} Cent.</translation>
        </message>
        <message>
            <source>This bundle was made by a newer version of the program.</source>
            <translation>Dieses Paket wurde von einer neueren Version des Programms gemacht.</translation>
        </message>
        <message>
            <source>This clip's name ends in {suffixes}.</source>
            <translation>Der Name dieses Clips endet auf {suffixes}.</translation>
        </message>
        <message>
            <source>This file is no {kind} of Passagework, or it is damaged.</source>
            <translation>Diese Datei ist kein {kind} von Passagework, oder sie ist beschädigt.</translation>
        </message>
        <message>
            <source>This is a bundle of somebody's days: nothing is recorded, imported or counted in it.</source>
            <translation>Das ist ein Paket mit Tagen von jemandem: Darin wird nichts aufgenommen, importiert oder gezählt.</translation>
        </message>
        <message>
            <source>This is judged by ear.</source>
            <translation>Das wird nach dem Gehör beurteilt.</translation>
        </message>
        <message>
            <source>This is speech, not playing.</source>
            <translation>Das ist Sprache, kein Spiel.</translation>
        </message>
        <message>
            <source>This is the day's one take of its passage: it is kept whatever it is.</source>
            <translation>Das ist die eine Aufnahme des Tages von dieser Stelle: Sie wird behalten, wie sie auch ist.</translation>
        </message>
        <message>
            <source>This item is a passage.</source>
            <translation>Dieser Punkt ist eine Stelle.</translation>
        </message>
        <message>
            <source>This journal is open for looking only.</source>
            <translation>Dieses Journal ist nur zum Ansehen geöffnet.</translation>
        </message>
        <message>
            <source>This journal is your own: there is nobody to reply to.</source>
            <translation>Dieses Journal ist das eigene: Eine Antwort geht an niemanden.</translation>
        </message>
        <message>
            <source>This may be '{nearest}', but not surely enough to say so.</source>
            <translation>Das könnte „{nearest}“ sein, aber nicht sicher genug, um es zu sagen.</translation>
        </message>
        <message>
            <source>This passage has fewer than two takes to choose from.</source>
            <translation>Diese Stelle hat weniger als zwei Aufnahmen zur Auswahl.</translation>
        </message>
        <message>
            <source>This passage has had its one chance.</source>
            <translation>Diese Stelle hatte ihre eine Chance.</translation>
        </message>
        <message>
            <source>This passage has no score file.</source>
            <translation>Diese Stelle hat keine Notendatei.</translation>
        </message>
        <message>
            <source>This run breaks off.</source>
            <translation>Dieser Durchlauf bricht ab.</translation>
        </message>
        <message>
            <source>This sounds like '{chosen}' (confidence {share}).</source>
            <translation>Das klingt wie „{chosen}“ (Sicherheit {share}).</translation>
        </message>
        <message>
            <source>This sounds like none of the passages (confidence {share}).</source>
            <translation>Das klingt wie keine der Stellen (Sicherheit {share}).</translation>
        </message>
        <message>
            <source>This take belongs to no passage.</source>
            <translation>Diese Aufnahme gehört zu keiner Stelle.</translation>
        </message>
        <message>
            <source>This take could not be measured.</source>
            <translation>Diese Aufnahme konnte nicht gemessen werden.</translation>
        </message>
        <message>
            <source>This take has no passage.</source>
            <translation>Diese Aufnahme hat keine Stelle.</translation>
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
            <source>This take is not of the passage that is due.</source>
            <translation>Diese Aufnahme ist nicht von der Stelle, die an der Reihe ist.</translation>
        </message>
        <message>
            <source>This {kind} was made by a newer version of the program.</source>
            <translation>Diese Datei ({kind}) wurde von einer neueren Version des Programms gemacht.</translation>
        </message>
        <message>
            <source>Three notes a beat cannot be dotted.</source>
            <translation>Drei Noten pro Schlag lassen sich nicht punktieren.</translation>
        </message>
        <message>
            <source>Thu</source>
            <translation>Do</translation>
        </message>
        <message>
            <source>Thu {rest}</source>
            <translation>Do {rest}</translation>
        </message>
        <message>
            <source>Thursdays</source>
            <translation>donnerstags</translation>
        </message>
        <message>
            <source>Time measured</source>
            <translation>Gemessene Zeit</translation>
        </message>
        <message>
            <source>To delete it all the same, switch no-retake off for the passage.</source>
            <translation>Um sie trotzdem zu löschen, die Regel „ohne Wiederholung“ für die Stelle ausschalten.</translation>
        </message>
        <message>
            <source>To work on: {category} '{text}', weight {value}</source>
            <translation>Zu bearbeiten: {category} „{text}“, Gewicht {value}</translation>
        </message>
        <message>
            <source>To work on: {category} '{text}', weight {value}, and {n} more.</source>
            <translation>Zu bearbeiten: {category} „{text}“, Gewicht {value}, und {n} weitere.</translation>
        </message>
        <message>
            <source>To work on: {category}, weight {value}</source>
            <translation>Zu bearbeiten: {category}, Gewicht {value}</translation>
        </message>
        <message>
            <source>To work on: {category}, weight {value}, and {n} more.</source>
            <translation>Zu bearbeiten: {category}, Gewicht {value}, und {n} weitere.</translation>
        </message>
        <message>
            <source>To work on: {category}{text}, weight {weight}</source>
            <translation>Zu bearbeiten: {category}{text}, Gewicht {weight}</translation>
        </message>
        <message>
            <source>Today's one take is still to come: warm up, play it slowly, then record</source>
            <translation>Die eine Aufnahme von heute steht noch aus: einspielen, langsam durchspielen, dann aufnehmen</translation>
        </message>
        <message>
            <source>Today's one take is still to come: warm up, play it slowly, then record.</source>
            <translation>Die eine Aufnahme von heute steht noch aus: einspielen, langsam durchgehen, dann aufnehmen.</translation>
        </message>
        <message>
            <source>Today's take of '{passage}' was made at {at} and stands as it is: this passage has one take a day.</source>
            <translation>Die heutige Aufnahme von „{passage}“ entstand um {at} und bleibt, wie sie ist: Diese Stelle hat eine Aufnahme am Tag.</translation>
        </message>
        <message>
            <source>Too few measured weeks, or no minutes logged on it, to say anything.</source>
            <translation>Zu wenige gemessene Wochen, oder keine Minuten dafür erfasst, um etwas zu sagen.</translation>
        </message>
        <message>
            <source>Too few notes agree on a reference A; enter the A instead.</source>
            <translation>Zu wenige Noten stimmen in einem A überein; das A stattdessen eingeben.</translation>
        </message>
        <message>
            <source>Too few notes could be measured to sum them up.</source>
            <translation>Zu wenige Noten waren messbar, um sie zusammenzufassen.</translation>
        </message>
        <message>
            <source>Too few notes were measured.</source>
            <translation>Zu wenige Noten wurden gemessen.</translation>
        </message>
        <message>
            <source>Too few of its beats begin a note to tell how steady it is.</source>
            <translation>Zu wenige seiner Schläge beginnen eine Note, um zu sagen, wie gleichmäßig er ist.</translation>
        </message>
        <message>
            <source>Too few takes: {days} practice days so far; a change needs {fewest_days} on each side.</source>
            <translation>Zu wenige Aufnahmen: bisher {days} Übetage; eine Veränderung braucht {fewest_days} auf jeder Seite.</translation>
        </message>
        <message>
            <source>Too little is played in this stretch.</source>
            <translation>In diesem Abschnitt wird zu wenig gespielt.</translation>
        </message>
        <message>
            <source>Too loud</source>
            <translation>Zu laut</translation>
        </message>
        <message>
            <source>Too quiet</source>
            <translation>Zu leise</translation>
        </message>
        <message>
            <source>Too short or too soft to be levelled.</source>
            <translation>Zu kurz oder zu leise, um angeglichen zu werden.</translation>
        </message>
        <message>
            <source>Trombone</source>
            <translation>Posaune</translation>
        </message>
        <message>
            <source>Trumpet</source>
            <translation>Trompete</translation>
        </message>
        <message>
            <source>Try again.</source>
            <translation>Erneut versuchen.</translation>
        </message>
        <message>
            <source>Tue</source>
            <translation>Di</translation>
        </message>
        <message>
            <source>Tue {rest}</source>
            <translation>Di {rest}</translation>
        </message>
        <message>
            <source>Tuesdays</source>
            <translation>dienstags</translation>
        </message>
        <message>
            <source>Tuned to different As; each take is held against its own.</source>
            <translation>Auf verschiedene A gestimmt; jede Aufnahme wird gegen ihr eigenes gehalten.</translation>
        </message>
        <message>
            <source>Turn the volume up and put the microphone near the loudspeaker, or join output and input with a cable.</source>
            <translation>Lauter stellen und das Mikrofon nahe an den Lautsprecher stellen, oder Ausgang und Eingang mit einem Kabel verbinden.</translation>
        </message>
        <message>
            <source>Two kinds of day end at the same minutes.</source>
            <translation>Zwei Tagarten enden bei denselben Minuten.</translation>
        </message>
        <message>
            <source>Two kinds of day have the same name.</source>
            <translation>Zwei Tagarten haben denselben Namen.</translation>
        </message>
        <message>
            <source>Two notes sound together.</source>
            <translation>Zwei Töne klingen zusammen.</translation>
        </message>
        <message>
            <source>Type 1 to {most_minutes} minutes.</source>
            <translation>1 bis {most_minutes} Minuten eingeben.</translation>
        </message>
        <message>
            <source>Type a number between 0 and 1440.</source>
            <translation>Eine Zahl von 0 bis 1440 eingeben.</translation>
        </message>
        <message>
            <source>Type at most {most_hours} hours; an estimate is enough.</source>
            <translation>Höchstens {most_hours} Stunden eingeben; eine Schätzung genügt.</translation>
        </message>
        <message>
            <source>Type more of its id.</source>
            <translation>Mehr von der Kennung eingeben.</translation>
        </message>
        <message>
            <source>Type one, for instance a scale.</source>
            <translation>Einen eingeben, zum Beispiel eine Tonleiter.</translation>
        </message>
        <message>
            <source>Type one, for instance its bars.</source>
            <translation>Einen eingeben, zum Beispiel die Takte.</translation>
        </message>
        <message>
            <source>Unevenness</source>
            <translation>Ungleich­mäßigkeit</translation>
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
            <source>Until {at}, when the clock was last used</source>
            <translation>Bis {at}, als die Uhr zuletzt benutzt wurde</translation>
        </message>
        <message>
            <source>Until {at}, when the program was last running</source>
            <translation>Bis {at}, als das Programm zuletzt lief</translation>
        </message>
        <message>
            <source>Up to 8 bars can be counted in.</source>
            <translation>Bis zu 8 Takte lassen sich vorzählen.</translation>
        </message>
        <message>
            <source>Upper string {upper_name}: {upper} ± {upper_uncertainty_cents} cents.</source>
            <translation>Obere Saite {upper_name}: {upper} ± {upper_uncertainty_cents} Cent.</translation>
        </message>
        <message>
            <source>Use at most {longest_name} letters.</source>
            <translation>Höchstens {longest_name} Buchstaben verwenden.</translation>
        </message>
        <message>
            <source>Use at most {longest} letters.</source>
            <translation>Höchstens {longest} Buchstaben verwenden.</translation>
        </message>
        <message>
            <source>Use that one, or close it first.</source>
            <translation>Jenes benutzen oder es zuerst schließen.</translation>
        </message>
        <message>
            <source>Variation of the beat lengths; less is steadier.</source>
            <translation>Schwankung der Schlaglängen; weniger ist gleichmäßiger.</translation>
        </message>
        <message>
            <source>Viola</source>
            <translation>Viola</translation>
        </message>
        <message>
            <source>Violin</source>
            <translation>Violine</translation>
        </message>
        <message>
            <source>Voice</source>
            <translation>Stimme</translation>
        </message>
        <message>
            <source>Wait a moment and try again.</source>
            <translation>Einen Augenblick warten und erneut versuchen.</translation>
        </message>
        <message>
            <source>Wait for that, or measure one.</source>
            <translation>Darauf warten oder eine messen.</translation>
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
            <source>Wed</source>
            <translation>Mi</translation>
        </message>
        <message>
            <source>Wed {rest}</source>
            <translation>Mi {rest}</translation>
        </message>
        <message>
            <source>Wednesdays</source>
            <translation>mittwochs</translation>
        </message>
        <message>
            <source>Week of {b_first}</source>
            <translation>Woche ab {b_first}</translation>
        </message>
        <message>
            <source>What placing the notes' beginnings adds to that spread by itself.</source>
            <translation>Was das Bestimmen der Notenanfänge allein zu dieser Streuung beiträgt.</translation>
        </message>
        <message>
            <source>What placing the notes' beginnings adds to the unevenness by itself.</source>
            <translation>Was das Bestimmen der Notenanfänge allein zur Ungleichmäßigkeit beiträgt.</translation>
        </message>
        <message>
            <source>What the practice clock counts in the same time is left out.</source>
            <translation>Was die Übeuhr in derselben Zeit zählt, bleibt weg.</translation>
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
            <source>Who and what is to be seen or heard in it is for you to judge: look at it before you give it away.</source>
            <translation>Wer und was darin zu sehen oder zu hören ist, muss man selbst beurteilen: vor dem Weitergeben ansehen.</translation>
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
            <source>Within {n} cents {value} a week over {takes} and {days}: {verdict}</source>
            <translation>Innerhalb {n} Cent {value} je Woche über {takes} und {days}: {verdict}</translation>
        </message>
        <message>
            <source>Without a passage</source>
            <translation>Ohne Stelle</translation>
        </message>
        <message>
            <source>Worth a visit: {since}</source>
            <translation>Einen Besuch wert: {since}</translation>
        </message>
        <message>
            <source>Write down what was said.</source>
            <translation>Aufschreiben, was gesagt wurde.</translation>
        </message>
        <message>
            <source>Write for instance 1-8.</source>
            <translation>Zum Beispiel 1-8 schreiben.</translation>
        </message>
        <message>
            <source>Write it out again, or take another file.</source>
            <translation>Neu schreiben lassen oder eine andere Datei nehmen.</translation>
        </message>
        <message>
            <source>Write it out again, or take the part alone.</source>
            <translation>Neu schreiben lassen oder nur die Stimme nehmen.</translation>
        </message>
        <message>
            <source>Write numbers from 0 to 1, e.g. '1 0.5 0.5'.</source>
            <translation>Zahlen von 0 bis 1 schreiben, z. B. „1 0.5 0.5“.</translation>
        </message>
        <message>
            <source>Write one, for instance 'bow hold'.</source>
            <translation>Einen schreiben, zum Beispiel „Bogenhaltung“.</translation>
        </message>
        <message>
            <source>Writing is not allowed{where}: {doing}.</source>
            <translation>Schreiben ist nicht erlaubt{where}: {doing}.</translation>
        </message>
        <message>
            <source>Wrong note: {written} is written. {place}.</source>
            <translation>Falsche Note: Notiert ist {written}. {place}.</translation>
        </message>
        <message>
            <source>Your own choice.</source>
            <translation>Selbst gewählt.</translation>
        </message>
        <message>
            <source>a new day has begun since</source>
            <translation>seitdem hat ein neuer Tag begonnen</translation>
        </message>
        <message>
            <source>a passage that is no longer there</source>
            <translation>eine Stelle, die nicht mehr da ist</translation>
        </message>
        <message>
            <source>a take is a part of this clip</source>
            <translation>eine Aufnahme ist ein Teil dieses Clips</translation>
        </message>
        <message>
            <source>again</source>
            <translation>noch einmal</translation>
        </message>
        <message>
            <source>aim: {aim}{met}</source>
            <translation>Ziel: {aim}{met}</translation>
        </message>
        <message>
            <source>and</source>
            <translation>und</translation>
        </message>
        <message>
            <source>and an unevenness of up to {steadiness_cv_percent} %</source>
            <translation>und einer Ungleichmäßigkeit bis {steadiness_cv_percent} %</translation>
        </message>
        <message>
            <source>and {found}</source>
            <translation>und {found}</translation>
        </message>
        <message>
            <source>another name</source>
            <translation>ein anderer Name</translation>
        </message>
        <message>
            <source>another rule</source>
            <translation>eine andere Regel</translation>
        </message>
        <message>
            <source>anything counts</source>
            <translation>alles zählt</translation>
        </message>
        <message>
            <source>arpeggio</source>
            <translation>Arpeggio</translation>
        </message>
        <message>
            <source>as tuned in this take</source>
            <translation>wie in dieser Aufnahme gestimmt</translation>
        </message>
        <message>
            <source>at least {parts} a day</source>
            <translation>mindestens {parts} am Tag</translation>
        </message>
        <message>
            <source>at {near_note}</source>
            <translation>bei {near_note}</translation>
        </message>
        <message>
            <source>at {start}</source>
            <translation>bei {start}</translation>
        </message>
        <message>
            <source>bar {number}{again}</source>
            <translation>Takt {number}{again}</translation>
        </message>
        <message>
            <source>before a change of the database's form</source>
            <translation>vor einer Änderung der Form der Datenbank</translation>
        </message>
        <message>
            <source>before going back to an earlier one</source>
            <translation>vor dem Zurückgehen zu einer früheren</translation>
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
            <source>bound for intonation</source>
            <translation>Grenze der Intonation</translation>
        </message>
        <message>
            <source>bound for steadiness</source>
            <translation>Grenze der Gleichmäßigkeit</translation>
        </message>
        <message>
            <source>break planned</source>
            <translation>Pause geplant</translation>
        </message>
        <message>
            <source>break taken away</source>
            <translation>Pause weggenommen</translation>
        </message>
        <message>
            <source>broken thirds</source>
            <translation>gebrochene Terzen</translation>
        </message>
        <message>
            <source>broken-off one</source>
            <translation>abgebrochener</translation>
        </message>
        <message>
            <source>broken-off ones</source>
            <translation>abgebrochene</translation>
        </message>
        <message>
            <source>cannot be decoded</source>
            <translation>lässt sich nicht dekodieren</translation>
        </message>
        <message>
            <source>cannot be read</source>
            <translation>lässt sich nicht lesen</translation>
        </message>
        <message>
            <source>cello</source>
            <translation>Violoncello</translation>
        </message>
        <message>
            <source>cents</source>
            <translation>Cent</translation>
        </message>
        <message>
            <source>cents per minute</source>
            <translation>Cent pro Minute</translation>
        </message>
        <message>
            <source>changed</source>
            <translation>verändert</translation>
        </message>
        <message>
            <source>changed marker</source>
            <translation>geänderte Anmerkung</translation>
        </message>
        <message>
            <source>channel {number}</source>
            <translation>Kanal {number}</translation>
        </message>
        <message>
            <source>column {number}</source>
            <translation>Spalte {number}</translation>
        </message>
        <message>
            <source>cut short</source>
            <translation>abgeschnitten</translation>
        </message>
        <message>
            <source>date changed</source>
            <translation>Termin geändert</translation>
        </message>
        <message>
            <source>date noted</source>
            <translation>Termin notiert</translation>
        </message>
        <message>
            <source>date taken away</source>
            <translation>Termin weggenommen</translation>
        </message>
        <message>
            <source>day marked as rest was</source>
            <translation>Tag mehr wurde als Ruhetag gekennzeichnet</translation>
        </message>
        <message>
            <source>day {day_number} · {days_kept} kept</source>
            <translation>Tag {day_number} · {days_kept} gehalten</translation>
        </message>
        <message>
            <source>days marked as rest were</source>
            <translation>Tage mehr wurden als Ruhetage gekennzeichnet</translation>
        </message>
        <message>
            <source>diminished seventh</source>
            <translation>verminderter Septakkord</translation>
        </message>
        <message>
            <source>dominant seventh</source>
            <translation>Dominantseptakkord</translation>
        </message>
        <message>
            <source>double bass</source>
            <translation>Kontrabass</translation>
        </message>
        <message>
            <source>double stop</source>
            <translation>Doppelgriff</translation>
        </message>
        <message>
            <source>drags</source>
            <translation>schleppt</translation>
        </message>
        <message>
            <source>due {due_on}</source>
            <translation>fällig {due_on}</translation>
        </message>
        <message>
            <source>dynamic span</source>
            <translation>Dynamikumfang</translation>
        </message>
        <message>
            <source>early</source>
            <translation>zu früh</translation>
        </message>
        <message>
            <source>end taken back</source>
            <translation>Ende zurückgenommen</translation>
        </message>
        <message>
            <source>ensemble</source>
            <translation>Ensemble</translation>
        </message>
        <message>
            <source>equal</source>
            <translation>gleichschwebend</translation>
        </message>
        <message>
            <source>equal temperament</source>
            <translation>gleichschwebende Stimmung</translation>
        </message>
        <message>
            <source>equal {value}</source>
            <translation>gleichschwebend {value}</translation>
        </message>
        <message>
            <source>expression</source>
            <translation>Ausdruck</translation>
        </message>
        <message>
            <source>faster</source>
            <translation>schneller</translation>
        </message>
        <message>
            <source>fifth</source>
            <translation>Quinte</translation>
        </message>
        <message>
            <source>first heard {first_heard}</source>
            <translation>zuerst gehört {first_heard}</translation>
        </message>
        <message>
            <source>five times</source>
            <translation>fünfmal</translation>
        </message>
        <message>
            <source>flat</source>
            <translation>zu tief</translation>
        </message>
        <message>
            <source>floating-point samples</source>
            <translation>Gleitkommawerte</translation>
        </message>
        <message>
            <source>four times</source>
            <translation>viermal</translation>
        </message>
        <message>
            <source>fourth</source>
            <translation>Quarte</translation>
        </message>
        <message>
            <source>gone</source>
            <translation>verschwunden</translation>
        </message>
        <message>
            <source>good</source>
            <translation>gut</translation>
        </message>
        <message>
            <source>harmonic minor</source>
            <translation>harmonisch Moll</translation>
        </message>
        <message>
            <source>has no moving picture</source>
            <translation>hat kein bewegtes Bild</translation>
        </message>
        <message>
            <source>has nothing that can be decoded</source>
            <translation>hat nichts, das sich dekodieren lässt</translation>
        </message>
        <message>
            <source>higher</source>
            <translation>höher</translation>
        </message>
        <message>
            <source>in a row</source>
            <translation>hintereinander</translation>
        </message>
        <message>
            <source>in each run</source>
            <translation>in jeder Folge</translation>
        </message>
        <message>
            <source>in this run</source>
            <translation>in dieser Folge</translation>
        </message>
        <message>
            <source>in total</source>
            <translation>insgesamt</translation>
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
            <source>in {parent}</source>
            <translation>in {parent}</translation>
        </message>
        <message>
            <source>intonation</source>
            <translation>Intonation</translation>
        </message>
        <message>
            <source>is damaged {position_s} s after its start</source>
            <translation>ist {position_s} s nach dem Anfang beschädigt</translation>
        </message>
        <message>
            <source>it depends on the target</source>
            <translation>es hängt vom Zielton ab</translation>
        </message>
        <message>
            <source>it is cut short or not well formed</source>
            <translation>sie ist abgeschnitten oder nicht wohlgeformt</translation>
        </message>
        <message>
            <source>it is longer than any piece</source>
            <translation>sie ist länger als jedes Stück</translation>
        </message>
        <message>
            <source>its level was not read</source>
            <translation>ihr Pegel wurde nicht gelesen</translation>
        </message>
        <message>
            <source>just</source>
            <translation>rein</translation>
        </message>
        <message>
            <source>just {value}</source>
            <translation>rein {value}</translation>
        </message>
        <message>
            <source>larger</source>
            <translation>größer</translation>
        </message>
        <message>
            <source>last practised 1 day ago.</source>
            <translation>zuletzt vor 1 Tag geübt.</translation>
        </message>
        <message>
            <source>last practised today.</source>
            <translation>zuletzt heute geübt.</translation>
        </message>
        <message>
            <source>last practised {n} days ago.</source>
            <translation>zuletzt vor {n} Tagen geübt.</translation>
        </message>
        <message>
            <source>last practised {since} day{value} ago.</source>
            <translation>zuletzt vor {since} Tag{value} geübt.</translation>
        </message>
        <message>
            <source>late</source>
            <translation>zu spät</translation>
        </message>
        <message>
            <source>later</source>
            <translation>später</translation>
        </message>
        <message>
            <source>less steady</source>
            <translation>weniger gleichmäßig</translation>
        </message>
        <message>
            <source>line added to the plan</source>
            <translation>Zeile zum Plan hinzugefügt</translation>
        </message>
        <message>
            <source>line left out</source>
            <translation>Zeile weggelassen</translation>
        </message>
        <message>
            <source>lines put in order</source>
            <translation>Zeilen geordnet</translation>
        </message>
        <message>
            <source>louder</source>
            <translation>lauter</translation>
        </message>
        <message>
            <source>lower</source>
            <translation>tiefer</translation>
        </message>
        <message>
            <source>major second</source>
            <translation>große Sekunde</translation>
        </message>
        <message>
            <source>major seventh</source>
            <translation>große Septime</translation>
        </message>
        <message>
            <source>major sixth</source>
            <translation>große Sexte</translation>
        </message>
        <message>
            <source>major third</source>
            <translation>große Terz</translation>
        </message>
        <message>
            <source>marked while playing</source>
            <translation>beim Spielen angemerkt</translation>
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
            <source>mean deviation</source>
            <translation>mittlere Abweichung</translation>
        </message>
        <message>
            <source>mean deviation {intonation}; tempo {tempo}; dynamic span {dynamics}</source>
            <translation>mittlere Abweichung {intonation}; Tempo {tempo}; Dynamikumfang {dynamics}</translation>
        </message>
        <message>
            <source>measured note on {subject}</source>
            <translation>gemessene Note auf {subject}</translation>
        </message>
        <message>
            <source>measured place</source>
            <translation>gemessener Ort</translation>
        </message>
        <message>
            <source>melodic minor</source>
            <translation>melodisch Moll</translation>
        </message>
        <message>
            <source>memory</source>
            <translation>Auswendig</translation>
        </message>
        <message>
            <source>met</source>
            <translation>erreicht</translation>
        </message>
        <message>
            <source>minor second</source>
            <translation>kleine Sekunde</translation>
        </message>
        <message>
            <source>minor seventh</source>
            <translation>kleine Septime</translation>
        </message>
        <message>
            <source>minor sixth</source>
            <translation>kleine Sexte</translation>
        </message>
        <message>
            <source>minor third</source>
            <translation>kleine Terz</translation>
        </message>
        <message>
            <source>more than 24 hours on {day}</source>
            <translation>mehr als 24 Stunden am {day}</translation>
        </message>
        <message>
            <source>more than one</source>
            <translation>mehr als eine</translation>
        </message>
        <message>
            <source>narrower</source>
            <translation>enger</translation>
        </message>
        <message>
            <source>natural minor</source>
            <translation>natürlich Moll</translation>
        </message>
        <message>
            <source>new marker</source>
            <translation>neue Anmerkung</translation>
        </message>
        <message>
            <source>new take</source>
            <translation>neue Aufnahme</translation>
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
            <source>not begun</source>
            <translation>nicht begonnen</translation>
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
            <source>not met</source>
            <translation>nicht erreicht</translation>
        </message>
        <message>
            <source>not practised yet.</source>
            <translation>noch nicht geübt.</translation>
        </message>
        <message>
            <source>nothing was done with it for a long while</source>
            <translation>sie wurde lange nicht benutzt</translation>
        </message>
        <message>
            <source>nothing was exported</source>
            <translation>es wurde nichts exportiert</translation>
        </message>
        <message>
            <source>nothing wrong, missing or added</source>
            <translation>nichts falsch, ausgelassen oder hinzugefügt</translation>
        </message>
        <message>
            <source>octave</source>
            <translation>Oktave</translation>
        </message>
        <message>
            <source>on {days}</source>
            <translation>an {days:dative}</translation>
        </message>
        <message>
            <source>or</source>
            <translation>oder</translation>
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
            <source>partly met</source>
            <translation>teilweise erreicht</translation>
        </message>
        <message>
            <source>passage</source>
            <translation>Stelle</translation>
        </message>
        <message>
            <source>per minute</source>
            <translation>pro Minute</translation>
        </message>
        <message>
            <source>piece</source>
            <translation>Stück</translation>
        </message>
        <message>
            <source>plan changed</source>
            <translation>Plan geändert</translation>
        </message>
        <message>
            <source>plan made</source>
            <translation>Plan gemacht</translation>
        </message>
        <message>
            <source>plan put away</source>
            <translation>Plan weggelegt</translation>
        </message>
        <message>
            <source>promise '{after}': {words}</source>
            <translation>Vorsatz „{after}“: {words}</translation>
        </message>
        <message>
            <source>promise '{made}' made</source>
            <translation>Vorsatz „{made}“ gefasst</translation>
        </message>
        <message>
            <source>quieter</source>
            <translation>leiser</translation>
        </message>
        <message>
            <source>rank correlation {coefficient}</source>
            <translation>Rangkorrelation {coefficient}</translation>
        </message>
        <message>
            <source>rest day</source>
            <translation>Ruhetag</translation>
        </message>
        <message>
            <source>rest on {rest_weekdays}</source>
            <translation>Ruhe am {rest_weekdays}</translation>
        </message>
        <message>
            <source>rhythm</source>
            <translation>Rhythmus</translation>
        </message>
        <message>
            <source>rushes</source>
            <translation>eilt</translation>
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
            <source>set work added</source>
            <translation>Aufgabe hinzugefügt</translation>
        </message>
        <message>
            <source>set work changed</source>
            <translation>Aufgabe geändert</translation>
        </message>
        <message>
            <source>set work taken away</source>
            <translation>Aufgabe weggenommen</translation>
        </message>
        <message>
            <source>set work ticked off</source>
            <translation>Aufgabe abgehakt</translation>
        </message>
        <message>
            <source>settled {settled_on}</source>
            <translation>erledigt {settled_on}</translation>
        </message>
        <message>
            <source>sharp</source>
            <translation>zu hoch</translation>
        </message>
        <message>
            <source>shift</source>
            <translation>Lagenwechsel</translation>
        </message>
        <message>
            <source>sight-reading</source>
            <translation>Blattspiel</translation>
        </message>
        <message>
            <source>since {since}</source>
            <translation>seit {since}</translation>
        </message>
        <message>
            <source>six times</source>
            <translation>sechsmal</translation>
        </message>
        <message>
            <source>slower</source>
            <translation>langsamer</translation>
        </message>
        <message>
            <source>smaller</source>
            <translation>kleiner</translation>
        </message>
        <message>
            <source>softer</source>
            <translation>leiser</translation>
        </message>
        <message>
            <source>sooner</source>
            <translation>früher</translation>
        </message>
        <message>
            <source>sound</source>
            <translation>Klang</translation>
        </message>
        <message>
            <source>speech</source>
            <translation>Sprache</translation>
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
            <source>still to work on</source>
            <translation>noch zu bearbeiten</translation>
        </message>
        <message>
            <source>string crossing</source>
            <translation>Saitenwechsel</translation>
        </message>
        <message>
            <source>study</source>
            <translation>Etüde</translation>
        </message>
        <message>
            <source>suggestion brought back</source>
            <translation>Vorschlag zurückgeholt</translation>
        </message>
        <message>
            <source>suggestion put aside</source>
            <translation>Vorschlag weggelegt</translation>
        </message>
        <message>
            <source>take {number} of {name}</source>
            <translation>Aufnahme {number} von {name}</translation>
        </message>
        <message>
            <source>take {number} of {name}, {practice_day}</source>
            <translation>Aufnahme {number} von {name}, {practice_day}</translation>
        </message>
        <message>
            <source>taken up again</source>
            <translation>wieder aufgenommen</translation>
        </message>
        <message>
            <source>target tempo</source>
            <translation>Zieltempo</translation>
        </message>
        <message>
            <source>teacher</source>
            <translation>Lehrkraft</translation>
        </message>
        <message>
            <source>the bundle was not merged</source>
            <translation>das Paket wurde nicht übernommen</translation>
        </message>
        <message>
            <source>the bundle was not opened</source>
            <translation>das Paket wurde nicht geöffnet</translation>
        </message>
        <message>
            <source>the bundle was not written</source>
            <translation>das Paket wurde nicht geschrieben</translation>
        </message>
        <message>
            <source>the clip was not read</source>
            <translation>der Clip wurde nicht gelesen</translation>
        </message>
        <message>
            <source>the clip was not written</source>
            <translation>der Clip wurde nicht geschrieben</translation>
        </message>
        <message>
            <source>the computer was off or asleep meanwhile</source>
            <translation>der Rechner war inzwischen aus oder im Ruhezustand</translation>
        </message>
        <message>
            <source>the date in the file's name</source>
            <translation>das Datum im Namen der Datei</translation>
        </message>
        <message>
            <source>the date in the file's tags</source>
            <translation>das Datum in den Angaben der Datei</translation>
        </message>
        <message>
            <source>the date inside the clip</source>
            <translation>das Datum im Clip</translation>
        </message>
        <message>
            <source>the day you gave</source>
            <translation>der angegebene Tag</translation>
        </message>
        <message>
            <source>the disk is full</source>
            <translation>die Platte ist voll</translation>
        </message>
        <message>
            <source>the disk refused it</source>
            <translation>die Platte lehnte es ab</translation>
        </message>
        <message>
            <source>the file was not read</source>
            <translation>die Datei wurde nicht gelesen</translation>
        </message>
        <message>
            <source>the minutes were not read</source>
            <translation>die Minuten wurden nicht gelesen</translation>
        </message>
        <message>
            <source>the present moment, since the file has no date</source>
            <translation>der jetzige Augenblick, da die Datei kein Datum hat</translation>
        </message>
        <message>
            <source>the recording did not start</source>
            <translation>die Aufnahme begann nicht</translation>
        </message>
        <message>
            <source>the recording is kept, but not filed yet</source>
            <translation>die Tonaufnahme ist behalten, aber noch nicht abgelegt</translation>
        </message>
        <message>
            <source>the recording stays as it is</source>
            <translation>die Tonaufnahme bleibt, wie sie ist</translation>
        </message>
        <message>
            <source>the reply was not read</source>
            <translation>die Antwort wurde nicht gelesen</translation>
        </message>
        <message>
            <source>the reply was not written</source>
            <translation>die Antwort wurde nicht geschrieben</translation>
        </message>
        <message>
            <source>the report was not written</source>
            <translation>der Bericht wurde nicht geschrieben</translation>
        </message>
        <message>
            <source>the same as row {earlier}, counted as another sitting</source>
            <translation>dieselbe wie Zeile {earlier}, als weitere Sitzung gezählt</translation>
        </message>
        <message>
            <source>the score was not copied</source>
            <translation>die Noten wurden nicht kopiert</translation>
        </message>
        <message>
            <source>the take was not read</source>
            <translation>die Aufnahme wurde nicht gelesen</translation>
        </message>
        <message>
            <source>the take was not unpacked</source>
            <translation>die Aufnahme wurde nicht ausgepackt</translation>
        </message>
        <message>
            <source>the time the file was last changed</source>
            <translation>die Zeit der letzten Änderung der Datei</translation>
        </message>
        <message>
            <source>the usual one</source>
            <translation>der übliche</translation>
        </message>
        <message>
            <source>the watched folder was not looked at</source>
            <translation>in den überwachten Ordner wurde nicht gesehen</translation>
        </message>
        <message>
            <source>they agree</source>
            <translation>sie stimmen überein</translation>
        </message>
        <message>
            <source>they disagree</source>
            <translation>sie stimmen nicht überein</translation>
        </message>
        <message>
            <source>three octaves</source>
            <translation>drei Oktaven</translation>
        </message>
        <message>
            <source>three times</source>
            <translation>dreimal</translation>
        </message>
        <message>
            <source>tick in the plan</source>
            <translation>Haken im Plan</translation>
        </message>
        <message>
            <source>tick of set work taken away</source>
            <translation>Haken an der Aufgabe weggenommen</translation>
        </message>
        <message>
            <source>ticked off on {done_on}</source>
            <translation>abgehakt am {done_on}</translation>
        </message>
        <message>
            <source>to work on</source>
            <translation>zu bearbeiten</translation>
        </message>
        <message>
            <source>today still open</source>
            <translation>heute noch offen</translation>
        </message>
        <message>
            <source>too few answers</source>
            <translation>zu wenige Antworten</translation>
        </message>
        <message>
            <source>too few takes</source>
            <translation>zu wenige Aufnahmen</translation>
        </message>
        <message>
            <source>too loud</source>
            <translation>zu laut</translation>
        </message>
        <message>
            <source>too quiet</source>
            <translation>zu leise</translation>
        </message>
        <message>
            <source>tritone</source>
            <translation>Tritonus</translation>
        </message>
        <message>
            <source>tuned pure</source>
            <translation>rein gestimmt</translation>
        </message>
        <message>
            <source>tuning</source>
            <translation>Einstimmen</translation>
        </message>
        <message>
            <source>twice</source>
            <translation>zweimal</translation>
        </message>
        <message>
            <source>two octaves</source>
            <translation>zwei Oktaven</translation>
        </message>
        <message>
            <source>under 0.001</source>
            <translation>unter 0.001</translation>
        </message>
        <message>
            <source>under a minute</source>
            <translation>unter einer Minute</translation>
        </message>
        <message>
            <source>unexpected end</source>
            <translation>unerwartetes Ende</translation>
        </message>
        <message>
            <source>unison</source>
            <translation>Prime</translation>
        </message>
        <message>
            <source>until {end}</source>
            <translation>bis {end}</translation>
        </message>
        <message>
            <source>until {until}</source>
            <translation>bis {until}</translation>
        </message>
        <message>
            <source>viola</source>
            <translation>Viola</translation>
        </message>
        <message>
            <source>violin</source>
            <translation>Violine</translation>
        </message>
        <message>
            <source>whether they agree is not clear</source>
            <translation>ob sie übereinstimmen, ist nicht klar</translation>
        </message>
        <message>
            <source>whole run</source>
            <translation>ganzer Durchlauf</translation>
        </message>
        <message>
            <source>whole runs</source>
            <translation>ganze Durchläufe</translation>
        </message>
        <message>
            <source>wider</source>
            <translation>weiter</translation>
        </message>
        <message>
            <source>within {mean_absolute_cents} cents</source>
            <translation>innerhalb von {mean_absolute_cents} Cent</translation>
        </message>
        <message>
            <source>within {value} cents and an unevenness of up to {rest} %</source>
            <translation>innerhalb von {value} Cent und einer Ungleichmäßigkeit bis {rest} %</translation>
        </message>
        <message>
            <source>worked on {days_worked_on}</source>
            <translation>daran gearbeitet an {days_worked_on:dative}</translation>
        </message>
        <message>
            <source>worse</source>
            <translation>schlechter</translation>
        </message>
        <message>
            <source>worse {value}</source>
            <translation>schlechter {value}</translation>
        </message>
        <message>
            <source>your ear and the measurements agree</source>
            <translation>Gehör und Messung stimmen überein</translation>
        </message>
        <message>
            <source>your ear and the measurements disagree</source>
            <translation>Gehör und Messung stimmen nicht überein</translation>
        </message>
        <message>
            <source>{about} The rule begins tomorrow: today there is a take already.</source>
            <translation>{about} Die Regel beginnt morgen: Heute gibt es schon eine Aufnahme.</translation>
        </message>
        <message>
            <source>{ahead} ahead left out</source>
            <translation>{ahead} in der Zukunft weggelassen</translation>
        </message>
        <message>
            <source>{alike} of {comparable} answers chose the take that measured better</source>
            <translation>{alike} von {comparable} Antworten wählten die Aufnahme, die besser gemessen wurde</translation>
        </message>
        <message>
            <source>{answered} answered. Nothing measures this, so nothing is compared.</source>
            <translation>{answered} beantwortet. Nichts misst dies, darum wird nichts verglichen.</translation>
        </message>
        <message>
            <source>{attempts}, {kept} kept: {spent} of recording, {practised_min} practised in all.</source>
            <translation>{attempts}, {kept} behalten: {spent} Aufnahmezeit, {practised_min} insgesamt geübt.</translation>
        </message>
        <message>
            <source>{attempts}, {kept} kept: {spent} of recording.</source>
            <translation>{attempts}, {kept} behalten: {spent} Aufnahmezeit.</translation>
        </message>
        <message>
            <source>{began}; the longest so far has {longest_run}.</source>
            <translation>{began}; die längste bisher hat {longest_run}.</translation>
        </message>
        <message>
            <source>{best} of {words} chosen as the best of several</source>
            <translation>{best} von {words:dative} als beste von mehreren gewählt</translation>
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
            <source>{broken} of the file are not numbers.</source>
            <translation>{broken} der Datei sind keine Zahlen.</translation>
        </message>
        <message>
            <source>{bundle} is no bundle of Passagework, or it is damaged.</source>
            <translation>{bundle} ist kein Paket von Passagework, oder es ist beschädigt.</translation>
        </message>
        <message>
            <source>{bundle} is not there.</source>
            <translation>{bundle} ist nicht da.</translation>
        </message>
        <message>
            <source>{category}, weight {weight}, to work on ({author}): {text}</source>
            <translation>{category}, Gewicht {weight}, zu bearbeiten ({author}): {text}</translation>
        </message>
        <message>
            <source>{category}, weight {weight}, {state_words} ({value})</source>
            <translation>{category}, Gewicht {weight}, {state_words} ({value})</translation>
        </message>
        <message>
            <source>{comparable} comparable answers; {missing} more before anything can be said.</source>
            <translation>{comparable} vergleichbare Antworten; noch {missing}, bevor sich etwas sagen lässt.</translation>
        </message>
        <message>
            <source>{counts}: {says} (by guessing, as lopsided a count has a chance of {chance}).</source>
            <translation>{counts}: {says} (eine so einseitige Zählung entsteht durch Raten mit einer Wahrscheinlichkeit von {chance}).</translation>
        </message>
        <message>
            <source>{count} times</source>
            <translation>{count}-mal</translation>
        </message>
        <message>
            <source>{database} is a folder, where the journal's database should be.</source>
            <translation>{database} ist ein Ordner; dort sollte die Datenbank des Journals sein.</translation>
        </message>
        <message>
            <source>{day_played}, {passage}, take {number}, {start}, at {note}</source>
            <translation>{day_played}, {passage}, Aufnahme {number}, {start}, bei {note}</translation>
        </message>
        <message>
            <source>{days_kept} kept, day {day}</source>
            <translation>{days_kept} gehalten, Tag {day}</translation>
        </message>
        <message>
            <source>{days_missed} missed</source>
            <translation>{days_missed} versäumt</translation>
        </message>
        <message>
            <source>{days_paused} paused</source>
            <translation>{days_paused} Pause</translation>
        </message>
        <message>
            <source>{days} practised of {all}, {minutes}, {takes}, 1 rest day.</source>
            <translation>{days} geübt von {all}, {minutes}, {takes}, 1 Ruhetag.</translation>
        </message>
        <message>
            <source>{days} until {before} may be in the hours from before this journal already: make that entry smaller, or the lifetime total counts them twice.</source>
            <translation>{days} bis {before} stecken vielleicht schon in den Stunden aus der Zeit vor diesem Journal: Verkleinere diesen Eintrag, sonst zählt die Gesamtsumme sie doppelt.</translation>
        </message>
        <message>
            <source>{days} with minutes in the journal already, left as they are</source>
            <translation>{days} mit Minuten schon im Journal, unverändert gelassen</translation>
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
            <source>{day} has not come yet.</source>
            <translation>{day} ist noch nicht da.</translation>
        </message>
        <message>
            <source>{explanation} From {basis}.</source>
            <translation>{explanation} Aus {basis}.</translation>
        </message>
        <message>
            <source>{files} written.</source>
            <translation>{files} geschrieben.</translation>
        </message>
        <message>
            <source>{finding} % {faster} than the take's mean tempo, as it can be meant to be.</source>
            <translation>{finding} % {faster} als das mittlere Tempo der Aufnahme, was auch so gemeint sein kann.</translation>
        </message>
        <message>
            <source>{folder} is not empty.</source>
            <translation>{folder} ist nicht leer.</translation>
        </message>
        <message>
            <source>{found} of {found2} written notes played</source>
            <translation>{found} von {found2} notierten Noten gespielt</translation>
        </message>
        <message>
            <source>{from_s} to {end_s}</source>
            <translation>{from_s} bis {end_s}</translation>
        </message>
        <message>
            <source>{hits} of {hits2} heard and marked.</source>
            <translation>{hits} von {hits2:dative} gehört und angemerkt.</translation>
        </message>
        <message>
            <source>{hours} h</source>
            <translation>{hours} h</translation>
        </message>
        <message>
            <source>{hours} h {rest} min</source>
            <translation>{hours} h {rest} min</translation>
        </message>
        <message>
            <source>{interval}, the interval against {readings} ± {uncertainty_cents} cents.</source>
            <translation>{interval}, das Intervall gegen {readings} ± {uncertainty_cents} Cent.</translation>
        </message>
        <message>
            <source>{interval}{interval2}, the interval against {readings} ± {uncertainty_cents} cents.</source>
            <translation>{interval}{interval2}, das Intervall gegen {readings} ± {uncertainty_cents} Cent.</translation>
        </message>
        <message>
            <source>{journal} is a file, not a folder.</source>
            <translation>{journal} ist eine Datei, kein Ordner.</translation>
        </message>
        <message>
            <source>{kept} days kept, day {day}</source>
            <translation>{kept} Tage gehalten, Tag {day}</translation>
        </message>
        <message>
            <source>{kind} by {finding} % from {start_s} to {end_s}</source>
            <translation>{kind} um {finding} % von {start_s} bis {end_s}</translation>
        </message>
        <message>
            <source>{kind} by {size} %</source>
            <translation>{kind} um {size} %</translation>
        </message>
        <message>
            <source>{label} {slope} over {value}: {verdict}</source>
            <translation>{label} {slope} über {value}: {verdict}</translation>
        </message>
        <message>
            <source>{label} {value} a week over {takes} and {days}: {verdict}</source>
            <translation>{label} {value} je Woche über {takes} und {days}: {verdict}</translation>
        </message>
        <message>
            <source>{label}: no interval, for one take gives none.</source>
            <translation>{label}: kein Intervall, denn eine Aufnahme allein ergibt keines.</translation>
        </message>
        <message>
            <source>{label}: no interval, for one take gives none; the word goes by how far two days differ.</source>
            <translation>{label}: kein Intervall, denn eine Aufnahme allein ergibt keines; das Wort richtet sich danach, wie weit zwei Tage auseinanderliegen.</translation>
        </message>
        <message>
            <source>{left_out} left out: {reasons}</source>
            <translation>{left_out} weggelassen: {reasons}</translation>
        </message>
        <message>
            <source>{left} left until {end}, fewer than are still to keep; the end can be moved from today on, and every day kept stays kept.</source>
            <translation>{left} übrig bis {end}, weniger als noch zu halten sind; das Ende lässt sich ab heute verschieben, und jeder gehaltene Tag bleibt gehalten.</translation>
        </message>
        <message>
            <source>{left} left until {end}.</source>
            <translation>{left} übrig bis {end}.</translation>
        </message>
        <message>
            <source>{levels} left out of dynamics: recorded at another level, through another input, with a mute, or with a level that sets itself or may do so.</source>
            <translation>{levels} in der Dynamik weggelassen: mit anderem Pegel, über einen anderen Eingang, mit Dämpfer oder mit einem Pegel aufgenommen, der sich selbst stellt oder stellen könnte.</translation>
        </message>
        <message>
            <source>{life}, still to work on.</source>
            <translation>{life}, noch zu bearbeiten.</translation>
        </message>
        <message>
            <source>{line}, {practised_min} practised in all.</source>
            <translation>{line}, insgesamt {practised_min} geübt.</translation>
        </message>
        <message>
            <source>{line}: choosing can look like getting better.</source>
            <translation>{line}: Auswählen kann wie Fortschritt aussehen.</translation>
        </message>
        <message>
            <source>{measured} {alone} where nothing of the kind was measured.</source>
            <translation>{measured} {alone} an Orten, wo nichts dieser Art gemessen wurde.</translation>
        </message>
        <message>
            <source>{measure}: no clear change</source>
            <translation>{measure}: keine klare Änderung</translation>
        </message>
        <message>
            <source>{minimum_minutes} min</source>
            <translation>{minimum_minutes} min</translation>
        </message>
        <message>
            <source>{minutes_done} of {minutes}</source>
            <translation>{minutes_done} von {minutes}</translation>
        </message>
        <message>
            <source>{minutes} in this journal</source>
            <translation>{minutes} in diesem Journal</translation>
        </message>
        <message>
            <source>{minutes} in this journal, and {hours} h before it{until}, as you reckon them: {total} h in all</source>
            <translation>{minutes} in diesem Journal, und {hours} h davor{until}, nach eigener Schätzung: {total} h insgesamt</translation>
        </message>
        <message>
            <source>{name} declares entities, which no score needs.</source>
            <translation>{name} vereinbart Ersetzungen, die keine Noten brauchen.</translation>
        </message>
        <message>
            <source>{name} has more than {most_notes} notes.</source>
            <translation>{name} hat mehr als {most_notes} Noten.</translation>
        </message>
        <message>
            <source>{name} has samples beyond full scale, which FLAC would clip.</source>
            <translation>{name} hat Werte über der Vollaussteuerung, die FLAC abschneiden würde.</translation>
        </message>
        <message>
            <source>{name} holds no pitched notes.</source>
            <translation>{name} enthält keine Noten mit Tonhöhe.</translation>
        </message>
        <message>
            <source>{name} holds no sound.</source>
            <translation>{name} enthält keinen Klang.</translation>
        </message>
        <message>
            <source>{name} is damaged{why}.</source>
            <translation>{name} ist beschädigt{why}.</translation>
        </message>
        <message>
            <source>{name} is missing</source>
            <translation>{name} fehlt</translation>
        </message>
        <message>
            <source>{name} is no score that can be read.</source>
            <translation>{name} enthält keine lesbaren Noten.</translation>
        </message>
        <message>
            <source>{name} is not a sound file that can be read here.</source>
            <translation>{name} ist keine Tondatei, die hier gelesen werden kann.</translation>
        </message>
        <message>
            <source>{name} unpacks to more than a score can be.</source>
            <translation>{name} wird ausgepackt größer, als Noten sein können.</translation>
        </message>
        <message>
            <source>{name} would not open ({error}).</source>
            <translation>{name} ließ sich nicht öffnen ({error}).</translation>
        </message>
        <message>
            <source>{name}: {kept} days kept, day {day}</source>
            <translation>{name}: {kept} Tage gehalten, Tag {day}</translation>
        </message>
        <message>
            <source>{needed} still to keep{in_run}.</source>
            <translation>{needed} noch zu halten{in_run}.</translation>
        </message>
        <message>
            <source>{new} new ({new2})</source>
            <translation>{new} neu ({new2})</translation>
        </message>
        <message>
            <source>{not_judged} could not be judged.</source>
            <translation>{not_judged} nicht zu beurteilen.</translation>
        </message>
        <message>
            <source>{notes}, {first} to {last}</source>
            <translation>{notes}, {first} bis {last}</translation>
        </message>
        <message>
            <source>{n} bars</source>
            <translation>{n} Takte</translation>
        </message>
        <message>
            <source>{n} broken-off ones</source>
            <translation>{n} abgebrochene</translation>
        </message>
        <message>
            <source>{n} channels</source>
            <translation>{n} Kanäle</translation>
        </message>
        <message>
            <source>{n} clips</source>
            <translation>{n} Clips</translation>
        </message>
        <message>
            <source>{n} days</source>
            <translation>{n} Tage</translation>
        </message>
        <message>
            <source>{n} days in a row</source>
            <translation>{n} Tage hintereinander</translation>
        </message>
        <message>
            <source>{n} days in total</source>
            <translation>{n} Tage insgesamt</translation>
        </message>
        <message>
            <source>{n} files</source>
            <translation>{n} Dateien</translation>
        </message>
        <message>
            <source>{n} left out: played on {one}.</source>
            <translation>{n} weggelassen: gespielt auf {one}.</translation>
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
            <source>{n} measured places</source>
            <translation>{n} gemessene Orte</translation>
        </message>
        <message>
            <source>{n} more promises</source>
            <translation>{n} weitere Vorsätze</translation>
        </message>
        <message>
            <source>{n} new clips</source>
            <translation>{n} neue Clips</translation>
        </message>
        <message>
            <source>{n} new markers</source>
            <translation>{n} neue Anmerkungen</translation>
        </message>
        <message>
            <source>{n} new takes</source>
            <translation>{n} neue Aufnahmen</translation>
        </message>
        <message>
            <source>{n} notes</source>
            <translation>{n} Noten</translation>
        </message>
        <message>
            <source>{n} passages</source>
            <translation>{n} Stellen</translation>
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
            <source>{n} remarks</source>
            <translation>{n} Bemerkungen</translation>
        </message>
        <message>
            <source>{n} rest days</source>
            <translation>{n} Ruhetage</translation>
        </message>
        <message>
            <source>{n} rows</source>
            <translation>{n} Zeilen</translation>
        </message>
        <message>
            <source>{n} samples</source>
            <translation>{n} Abtastwerte</translation>
        </message>
        <message>
            <source>{n} samples were</source>
            <translation>{n} Abtastwerte wurden</translation>
        </message>
        <message>
            <source>{n} takes</source>
            <translation>{n} Aufnahmen</translation>
        </message>
        <message>
            <source>{n} takes on {days}</source>
            <translation>{n} Aufnahmen an {days:dative}</translation>
        </message>
        <message>
            <source>{n} tasks</source>
            <translation>{n} Aufgaben</translation>
        </message>
        <message>
            <source>{n} weeks</source>
            <translation>{n} Wochen</translation>
        </message>
        <message>
            <source>{n} whole runs</source>
            <translation>{n} ganze Durchläufe</translation>
        </message>
        <message>
            <source>{octaves} octaves</source>
            <translation>{octaves} Oktaven</translation>
        </message>
        <message>
            <source>{of_count} measured notes on {subject}</source>
            <translation>{of_count} gemessenen Noten auf {subject}</translation>
        </message>
        <message>
            <source>{offset_ms} ms {word}</source>
            <translation>{offset_ms} ms {word}</translation>
        </message>
        <message>
            <source>{over_rest} {were} more than the rule allows.</source>
            <translation>{over_rest} {were}, als die Regel erlaubt.</translation>
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
            <source>{path} cannot be read.</source>
            <translation>{path} lässt sich nicht lesen.</translation>
        </message>
        <message>
            <source>{path} cannot be recorded: there is no room on the disk.</source>
            <translation>{path} lässt sich nicht aufnehmen: Auf der Platte ist kein Platz.</translation>
        </message>
        <message>
            <source>{path} cannot be recovered now ({strerror}).</source>
            <translation>{path} lässt sich jetzt nicht retten ({strerror}).</translation>
        </message>
        <message>
            <source>{path} could not be read ({strerror}).</source>
            <translation>{path} ließ sich nicht lesen ({strerror}).</translation>
        </message>
        <message>
            <source>{path} could not be read.</source>
            <translation>{path} ließ sich nicht lesen.</translation>
        </message>
        <message>
            <source>{path} could not be written: {reason}.</source>
            <translation>{path} ließ sich nicht schreiben: {reason}.</translation>
        </message>
        <message>
            <source>{path} ends early: {frames_read} s of {stated} s are there.</source>
            <translation>{path} endet zu früh: {frames_read} s von {stated} s sind da.</translation>
        </message>
        <message>
            <source>{path} exists already and is not overwritten.</source>
            <translation>{path} gibt es schon; sie wird nicht überschrieben.</translation>
        </message>
        <message>
            <source>{path} has no sound there.</source>
            <translation>{path} hat dort keinen Ton.</translation>
        </message>
        <message>
            <source>{path} has to be decoded whole.</source>
            <translation>{path} muss ganz dekodiert werden.</translation>
        </message>
        <message>
            <source>{path} has {channels} channels; FLAC holds {most_channels}.</source>
            <translation>{path} hat {channels} Kanäle; FLAC fasst {most_channels}.</translation>
        </message>
        <message>
            <source>{path} holds no recorded sound.</source>
            <translation>{path} enthält keinen aufgenommenen Ton.</translation>
        </message>
        <message>
            <source>{path} holds no sound.</source>
            <translation>{path} enthält keinen Klang.</translation>
        </message>
        <message>
            <source>{path} is a device or a pipe, not a sound file.</source>
            <translation>{path} ist ein Gerät oder eine Pipe, keine Tondatei.</translation>
        </message>
        <message>
            <source>{path} is a folder, not a sound file.</source>
            <translation>{path} ist ein Ordner, keine Tondatei.</translation>
        </message>
        <message>
            <source>{path} is a video without a sound track.</source>
            <translation>{path} ist ein Video ohne Tonspur.</translation>
        </message>
        <message>
            <source>{path} is damaged {frames_read} s after its start.</source>
            <translation>{path} ist {frames_read} s nach dem Anfang beschädigt.</translation>
        </message>
        <message>
            <source>{path} is empty.</source>
            <translation>{path} ist leer.</translation>
        </message>
        <message>
            <source>{path} is larger than {most_bytes} MB, too large for minutes.</source>
            <translation>{path} ist größer als {most_bytes} MB, zu groß für Minuten.</translation>
        </message>
        <message>
            <source>{path} is not a sound file that can be read here.</source>
            <translation>{path} ist keine Tondatei, die hier gelesen werden kann.</translation>
        </message>
        <message>
            <source>{path} is not a text file.</source>
            <translation>{path} ist keine Textdatei.</translation>
        </message>
        <message>
            <source>{path} is not there.</source>
            <translation>{path} ist nicht da.</translation>
        </message>
        <message>
            <source>{path} is too large for a score.</source>
            <translation>{path} ist für Noten zu groß.</translation>
        </message>
        <message>
            <source>{path} is too short to be a take: {duration_s} s.</source>
            <translation>{path} ist zu kurz für eine Aufnahme: {duration_s} s.</translation>
        </message>
        <message>
            <source>{path} may not be read.</source>
            <translation>{path} darf nicht gelesen werden.</translation>
        </message>
        <message>
            <source>{path} takes too long to read; it is probably damaged.</source>
            <translation>{path} braucht zu lange zum Lesen und ist wahrscheinlich beschädigt.</translation>
        </message>
        <message>
            <source>{path} was not filed</source>
            <translation>{path} wurde nicht abgelegt</translation>
        </message>
        <message>
            <source>{path} was not looked into</source>
            <translation>in {path} wurde nicht gesehen</translation>
        </message>
        <message>
            <source>{path} was not recorded by this program.</source>
            <translation>{path} wurde nicht von diesem Programm aufgenommen.</translation>
        </message>
        <message>
            <source>{path}, which holds the same sound</source>
            <translation>{path} mit demselben Klang</translation>
        </message>
        <message>
            <source>{pause} to {pause2} was a pause. Pauses are normal; short sessions are a good way back.</source>
            <translation>Vom {pause} bis zum {pause2} war Pause. Pausen sind normal; kurze Sitzungen sind ein guter Weg zurück.</translation>
        </message>
        <message>
            <source>{pcm_path} could not be turned into FLAC ({reason}).</source>
            <translation>{pcm_path} ließ sich nicht in FLAC umwandeln ({reason}).</translation>
        </message>
        <message>
            <source>{places} of {of_all}, outside every plausible target by more than the uncertainty.</source>
            <translation>{places} von {of_all}, außerhalb jedes möglichen Zieltons um mehr als die Unsicherheit.</translation>
        </message>
        <message>
            <source>{place}: {size}, {offset_percent} % of a beat.</source>
            <translation>{place}: {size}, {offset_percent} % eines Schlags.</translation>
        </message>
        <message>
            <source>{place}it was not measured outside {limit} {unit} when it was marked.</source>
            <translation>{place}als es angemerkt wurde, war es nicht außerhalb von {limit} {unit} gemessen.</translation>
        </message>
        <message>
            <source>{place}one of the two is not measurable.</source>
            <translation>{place}eine der beiden ist nicht messbar.</translation>
        </message>
        <message>
            <source>{place}{word}, held against {limit} {unit}.</source>
            <translation>{place}{word}, gehalten gegen {limit} {unit}.</translation>
        </message>
        <message>
            <source>{played} instead of {name}</source>
            <translation>{played} statt {name}</translation>
        </message>
        <message>
            <source>{played} is not written</source>
            <translation>{played} ist nicht notiert</translation>
        </message>
        <message>
            <source>{position_s} s lies outside the take, which lasts {duration_s} s.</source>
            <translation>{position_s} s liegt außerhalb der Aufnahme, die {duration_s} s dauert.</translation>
        </message>
        <message>
            <source>{practice_day}  {passage_name}, take {number} ({duration_s})</source>
            <translation>{practice_day}  {passage_name}, Aufnahme {number} ({duration_s})</translation>
        </message>
        <message>
            <source>{practice_day}  {passage_name}, take {take_number}, {start_s}{near}  {category} ({state_words}, {author}){text}</source>
            <translation>{practice_day}  {passage_name}, Aufnahme {take_number}, {start_s}{near}  {category} ({state_words}, {author}){text}</translation>
        </message>
        <message>
            <source>{practice_day} does not match the reference take.</source>
            <translation>Die Aufnahme vom {practice_day} passt nicht zur Vergleichsaufnahme.</translation>
        </message>
        <message>
            <source>{practice_day}, take {number}</source>
            <translation>{practice_day}, Aufnahme {number}</translation>
        </message>
        <message>
            <source>{practice_day}, {passage_name}, take {take_number}, {start_s}{near}</source>
            <translation>{practice_day}, {passage_name}, Aufnahme {take_number}, {start_s}{near}</translation>
        </message>
        <message>
            <source>{practised} practised of {days}</source>
            <translation>{practised} geübt von {days:dative}</translation>
        </message>
        <message>
            <source>{practised} practised, {total}</source>
            <translation>{practised} geübt, {total}</translation>
        </message>
        <message>
            <source>{rest_days} allowed{each}</source>
            <translation>{rest_days} erlaubt{each}</translation>
        </message>
        <message>
            <source>{rest_left} left.</source>
            <translation>{rest_left} übrig.</translation>
        </message>
        <message>
            <source>{rest_taken} rest</source>
            <translation>{rest_taken} Ruhetage</translation>
        </message>
        <message>
            <source>{rest} min</source>
            <translation>{rest} min</translation>
        </message>
        <message>
            <source>{retuned} left out of intonation: held against another temperament, tonic or tuning of the strings.</source>
            <translation>{retuned} in der Intonation weggelassen: gegen eine andere Stimmung, einen anderen Grundton oder anders gestimmte Saiten gehalten.</translation>
        </message>
        <message>
            <source>{rows} the same as an earlier one, counted as another sitting</source>
            <translation>{rows} wie eine frühere, als weitere Sitzung gezählt</translation>
        </message>
        <message>
            <source>{says}: {start_s}, for {length}; left out.</source>
            <translation>{says}: {start_s}, {length} lang; weggelassen.</translation>
        </message>
        <message>
            <source>{since} to {following}</source>
            <translation>{since} bis {following}</translation>
        </message>
        <message>
            <source>{source} could not be copied ({strerror}).</source>
            <translation>{source} ließ sich nicht kopieren ({strerror}).</translation>
        </message>
        <message>
            <source>{source} ends before the part that is to be kept.</source>
            <translation>{source} endet vor dem Teil, der behalten werden soll.</translation>
        </message>
        <message>
            <source>{source} is not there.</source>
            <translation>{source} ist nicht da.</translation>
        </message>
        <message>
            <source>{source} is too long for a WAV file (4 GiB).</source>
            <translation>{source} ist für eine WAV-Datei zu lang (4 GiB).</translation>
        </message>
        <message>
            <source>{source} was changed while it was read.</source>
            <translation>{source} wurde während des Lesens verändert.</translation>
        </message>
        <message>
            <source>{source}, in this computer's time zone</source>
            <translation>{source}, in der Zeitzone dieses Rechners</translation>
        </message>
        <message>
            <source>{spec} from {tonic}{start_octave} goes beyond the {player}.</source>
            <translation>{spec} ab {tonic}{start_octave} geht über den Umfang von {player} hinaus.</translation>
        </message>
        <message>
            <source>{start_s} to {end_s}</source>
            <translation>{start_s} bis {end_s}</translation>
        </message>
        <message>
            <source>{start_s}: {size} cents {kind}</source>
            <translation>{start_s}: {size} Cent {kind}</translation>
        </message>
        <message>
            <source>{start} to {end}</source>
            <translation>{start} bis {end}</translation>
        </message>
        <message>
            <source>{subject} {finding} cents {kind}</source>
            <translation>{subject} {finding} Cent {kind}</translation>
        </message>
        <message>
            <source>{subject} {size} cents {kind}</source>
            <translation>{subject} {size} Cent {kind}</translation>
        </message>
        <message>
            <source>{take} deleted</source>
            <translation>{take} gelöscht</translation>
        </message>
        <message>
            <source>{take} restored</source>
            <translation>{take} wiederhergestellt</translation>
        </message>
        <message>
            <source>{target_lufs} LUFS would overload it: peaks stay at -1 dBTP.</source>
            <translation>{target_lufs} LUFS würden ihn übersteuern: Die Spitzen bleiben bei -1 dBTP.</translation>
        </message>
        <message>
            <source>{target} cannot be written ({strerror}).</source>
            <translation>{target} lässt sich nicht schreiben ({strerror}).</translation>
        </message>
        <message>
            <source>{tonic} chromatic {figure}, {octaves}</source>
            <translation>{figure} chromatisch ab {tonic}, {octaves}</translation>
        </message>
        <message>
            <source>{tonic} diminished seventh {figure}, {octaves}</source>
            <translation>{figure} {tonic} mit vermindertem Septakkord, {octaves}</translation>
        </message>
        <message>
            <source>{tonic} dominant seventh {figure}, {octaves}</source>
            <translation>{figure} {tonic} mit Dominantseptakkord, {octaves}</translation>
        </message>
        <message>
            <source>{tonic} harmonic minor {figure}, {octaves}</source>
            <translation>{figure} {tonic}-Moll harmonisch, {octaves}</translation>
        </message>
        <message>
            <source>{tonic} major {figure}, {octaves}</source>
            <translation>{figure} {tonic}-Dur, {octaves}</translation>
        </message>
        <message>
            <source>{tonic} melodic minor {figure}, {octaves}</source>
            <translation>{figure} {tonic}-Moll melodisch, {octaves}</translation>
        </message>
        <message>
            <source>{tonic} minor {figure}, {octaves}</source>
            <translation>{tonic}-Moll {figure}, {octaves}</translation>
        </message>
        <message>
            <source>{tonic} natural minor {figure}, {octaves}</source>
            <translation>{figure} {tonic}-Moll, {octaves}</translation>
        </message>
        <message>
            <source>{unbroken_min} without a break. A few minutes' rest is good for hands, back and ears; if anything hurts, stop for today.</source>
            <translation>{unbroken_min} ohne Pause. Ein paar Minuten Ruhe tun Händen, Rücken und Ohren gut; wenn etwas wehtut, für heute aufhören.</translation>
        </message>
        <message>
            <source>{unit} a week</source>
            <translation>{unit} in der Woche</translation>
        </message>
        <message>
            <source>{unread} not read</source>
            <translation>{unread} nicht gelesen</translation>
        </message>
        <message>
            <source>{value} % of the notes, {value2} % of the sounding time</source>
            <translation>{value} % der Noten, {value2} % der klingenden Zeit</translation>
        </message>
        <message>
            <source>{value} ({low} to {high}) {unit}</source>
            <translation>{value} ({low} bis {high}) {unit}</translation>
        </message>
        <message>
            <source>{value} BPM</source>
            <translation>{value} BPM</translation>
        </message>
        <message>
            <source>{value} BPM per minute</source>
            <translation>{value} BPM pro Minute</translation>
        </message>
        <message>
            <source>{value} Hz</source>
            <translation>{value} Hz</translation>
        </message>
        <message>
            <source>{value} LUFS</source>
            <translation>{value} LUFS</translation>
        </message>
        <message>
            <source>{value} MB</source>
            <translation>{value} MB</translation>
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
            <source>{value} dB</source>
            <translation>{value} dB</translation>
        </message>
        <message>
            <source>{value} dBTP</source>
            <translation>{value} dBTP</translation>
        </message>
        <message>
            <source>{value} h</source>
            <translation>{value} h</translation>
        </message>
        <message>
            <source>{value} is no bundle of Passagework.</source>
            <translation>{value} ist kein Paket von Passagework.</translation>
        </message>
        <message>
            <source>{value} kB</source>
            <translation>{value} kB</translation>
        </message>
        <message>
            <source>{value} ms</source>
            <translation>{value} ms</translation>
        </message>
        <message>
            <source>{value} s</source>
            <translation>{value} s</translation>
        </message>
        <message>
            <source>{value}; due {due_on}</source>
            <translation>{value}; fällig {due_on}</translation>
        </message>
        <message>
            <source>{what}, due in {days} days.</source>
            <translation>{what}, fällig in {days} Tagen.</translation>
        </message>
        <message>
            <source>{what}, due {days_left}.</source>
            <translation>{what}, fällig {days_left}.</translation>
        </message>
        <message>
            <source>{what}, played {value} softer</source>
            <translation>{what}, {value} leiser gespielt</translation>
        </message>
        <message>
            <source>{when} ago this week: {passage}, {practice_day}.</source>
            <translation>Vor {when} in dieser Woche: {passage}, {practice_day}.</translation>
        </message>
        <message>
            <source>{when}, take {number} ({length})</source>
            <translation>{when}, Aufnahme {number} ({length})</translation>
        </message>
        <message>
            <source>{when}: the later takes are {value} % {more}, and too few were played at one tempo; that alone can change the rest.</source>
            <translation>{when}: Die späteren Aufnahmen sind {value} % {more}, und zu wenige wurden in gleichem Tempo gespielt; das allein kann das Übrige ändern.</translation>
        </message>
        <message>
            <source>{when}: the later takes are {value} % {more}; intonation and steadiness are compared at matched tempo{out}.</source>
            <translation>{when}: Die späteren Aufnahmen sind {value} % {more}; Intonation und Gleichmäßigkeit werden bei gleichem Tempo verglichen{out}.</translation>
        </message>
        <message>
            <source>{whole} and {names}</source>
            <translation>{whole} und {names}</translation>
        </message>
        <message>
            <source>{words} over {points}.</source>
            <translation>{words} an {points}.</translation>
        </message>
        <message>
            <source>{word} {habit} as printed, {count}</source>
            <translation>{word} {habit} wie gedruckt, {count}</translation>
        </message>
        <message>
            <source>{word}: slope {slope} a week, scatter {scatter}</source>
            <translation>{word}: Steigung {slope} je Woche, Streuung {scatter}</translation>
        </message>
        <message>
            <source>{years} years</source>
            <translation>{years} Jahre</translation>
        </message>
        <message>
            <source>±{extent} cents at {rate_hz} Hz</source>
            <translation>±{extent} Cent bei {rate_hz} Hz</translation>
        </message>
    </context>
    <context>
        <name>said dative</name>
        <message>
            <source>{n} bars</source>
            <translation>{n} Takten</translation>
        </message>
        <message>
            <source>{n} days</source>
            <translation>{n} Tagen</translation>
        </message>
        <message>
            <source>{n} measured places</source>
            <translation>{n} gemessenen Orten</translation>
        </message>
        <message>
            <source>{n} practice days</source>
            <translation>{n} Übetagen</translation>
        </message>
        <message>
            <source>{n} rest days</source>
            <translation>{n} Ruhetagen</translation>
        </message>
    </context>
</TS>
