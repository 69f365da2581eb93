<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de_DE" sourcelanguage="en">
 <context>
  <name>AnswerRow</name>
  <message>
   <source>At which wheel?</source>
   <translation>An welchem Rad?</translation>
  </message>
  <message>
   <source>Choose a cause</source>
   <translation>Ursache wählen</translation>
  </message>
  <message>
   <source>Hand in</source>
   <translation>Abgeben</translation>
  </message>
  <message>
   <source>How sure are you of both?</source>
   <translation>Wie sicher ist beides?</translation>
  </message>
  <message>
   <source>What is wrong?  (A)</source>
   <translation>Was ist defekt?  (A)</translation>
  </message>
 </context>
 <context>
  <name>Article</name>
  <message>
   <source>Caution</source>
   <translation>Vorsicht</translation>
  </message>
  <message>
   <source>Cautions</source>
   <translation>Vorsicht</translation>
  </message>
  <message>
   <source>Left out</source>
   <translation>Ausgelassen</translation>
  </message>
  <message>
   <source>Read from</source>
   <translation>Gelesen aus</translation>
  </message>
  <message>
   <source>Samples</source>
   <translation>Messwerte</translation>
  </message>
  <message>
   <source>Step, km/h</source>
   <translation>Stufe, km/h</translation>
  </message>
  <message>
   <source>Unit</source>
   <translation>Einheit</translation>
  </message>
  <message>
   <source>Wheel</source>
   <translation>Rad</translation>
  </message>
 </context>
 <context>
  <name>BenchPage</name>
  <message>
   <source>Back  (B)</source>
   <translation>Zurück  (B)</translation>
  </message>
  <message>
   <source>Back to the answer before</source>
   <translation>Zurück zur vorigen Antwort</translation>
  </message>
  <message>
   <source>Cannot say  (C)</source>
   <translation>Nicht zu sagen  (C)</translation>
  </message>
  <message>
   <source>Cannot say: done, and it told nothing</source>
   <translation>Nicht zu sagen: gemacht, ohne Ergebnis</translation>
  </message>
  <message>
   <source>Close  (Esc)</source>
   <translation>Schließen  (Esc)</translation>
  </message>
  <message>
   <source>Close this page</source>
   <translation>Diese Seite schließen</translation>
  </message>
  <message>
   <source>Not done  (S)</source>
   <translation>Nicht gemacht  (S)</translation>
  </message>
  <message>
   <source>Not done: go on without this step</source>
   <translation>Nicht gemacht: ohne diesen Schritt weiter</translation>
  </message>
  <message>
   <source>Start afresh</source>
   <translation>Neu beginnen</translation>
  </message>
  <message>
   <source>Take the newest answer back</source>
   <translation>Die letzte Antwort zurücknehmen</translation>
  </message>
  <message>
   <source>The answer of that number</source>
   <translation>Die Antwort mit dieser Nummer</translation>
  </message>
  <message>
   <source>Undo  (U)</source>
   <translation>Rückgängig  (U)</translation>
  </message>
 </context>
 <context>
  <name>CarSketch</name>
  <message>
   <source>Probability of each corner: {}</source>
   <translation>Wahrscheinlichkeit jeder Radecke: {}</translation>
  </message>
  <message>
   <source>Probability that the fault sits at this corner</source>
   <translation>Wahrscheinlichkeit, dass der Fehler an dieser Radecke sitzt</translation>
  </message>
 </context>
 <context>
  <name>CheckShelf</name>
  <message>
   <source>Cautions</source>
   <translation>Vorsicht</translation>
  </message>
  <message>
   <source>Check</source>
   <translation>Prüfung</translation>
  </message>
  <message>
   <source>Checks</source>
   <translation>Prüfungen</translation>
  </message>
  <message>
   <source>Costs now, or answer</source>
   <translation>Kostet, oder Antwort</translation>
  </message>
  <message>
   <source>Do this check  (Enter)</source>
   <translation>Diese Prüfung machen  (Enter)</translation>
  </message>
  <message>
   <source>No caution belongs to this check.</source>
   <translation>Zu dieser Prüfung gehört kein Vorsichtshinweis.</translation>
  </message>
 </context>
 <context>
  <name>CompanionsInstrument</name>
  <message>
   <source>Arrows move along the time, plus and minus zoom, Home shows the whole recording.</source>
   <translation>Pfeiltasten gehen durch die Zeit, Plus und Minus zoomen, Pos1 zeigt die ganze Aufzeichnung.</translation>
  </message>
  <message>
   <source>Companion channels over time</source>
   <translation>Begleitsignale über der Zeit</translation>
  </message>
  <message>
   <source>Seconds of the recording</source>
   <translation>Sekunden der Aufzeichnung</translation>
  </message>
  <message>
   <source>The recording holds nothing of the car beside its wheels.</source>
   <translation>Die Aufzeichnung enthält außer den Rädern nichts vom Fahrzeug.</translation>
  </message>
 </context>
 <context>
  <name>Comparing</name>
  <message>
   <source>Reading {}</source>
   <translation>Lese {}</translation>
  </message>
  <message>
   <source>Reading {}: {}</source>
   <translation>Lese {}: {}</translation>
  </message>
 </context>
 <context>
  <name>ComparisonPanel</name>
  <message>
   <source>Divergence
here</source>
   <translation>Abweichung
hier</translation>
  </message>
  <message>
   <source>Divergence
there</source>
   <translation>Abweichung
dort</translation>
  </message>
  <message>
   <source>End the comparison</source>
   <translation>Vergleich beenden</translation>
  </message>
  <message>
   <source>Half of the time a wheel is nearer than this to what it should read; a loss is a signal that is gone or briefly low.</source>
   <translation>Die halbe Zeit liegt ein Rad näher als dies an seinem Sollwert; ein Ausfall ist ein Signal, das fehlt oder kurz zu niedrig ist.</translation>
  </message>
  <message>
   <source>Lay over by distance</source>
   <translation>Über den Weg legen</translation>
  </message>
  <message>
   <source>Lay over by time</source>
   <translation>Über die Zeit legen</translation>
  </message>
  <message>
   <source>Losses per km
here</source>
   <translation>Ausfälle je km
hier</translation>
  </message>
  <message>
   <source>Losses per km
there</source>
   <translation>Ausfälle je km
dort</translation>
  </message>
  <message>
   <source>Pale: {}, by {}</source>
   <translation>Blass: {}, über {}</translation>
  </message>
  <message>
   <source>The wheels in both recordings</source>
   <translation>Die Räder in beiden Aufzeichnungen</translation>
  </message>
  <message>
   <source>Wheel</source>
   <translation>Rad</translation>
  </message>
  <message>
   <source>distance</source>
   <translation>Weg</translation>
  </message>
  <message>
   <source>time</source>
   <translation>Zeit</translation>
  </message>
 </context>
 <context>
  <name>CornerKey</name>
  <message>
   <source>Show the lines of the wheel {}</source>
   <translation>Linien des Rades {} zeigen</translation>
  </message>
  <message>
   <source>{} hidden</source>
   <translation>{} ausgeblendet</translation>
  </message>
  <message>
   <source>{}: press to hide or show</source>
   <translation>{}: drücken zum Aus- oder Einblenden</translation>
  </message>
 </context>
 <context>
  <name>CursorReadout</name>
  <message>
   <source>Click, or press comma or full stop, to read the values.</source>
   <translation>Klicken oder Komma oder Punkt drücken, um Werte abzulesen.</translation>
  </message>
  <message>
   <source>Difference from what the wheel should read by the others and the curve.</source>
   <translation>Abstand von dem, was das Rad nach den anderen und der Kurve zeigen müsste.</translation>
  </message>
  <message>
   <source>From the mark to the cursor; differences in {}.</source>
   <translation>Von der Marke zum Cursor; Differenzen in {}.</translation>
  </message>
  <message>
   <source>differences, {}</source>
   <translation>Differenzen, {}</translation>
  </message>
  <message>
   <source>{:.1f} s not recorded</source>
   <translation>{:.1f} s nicht aufgezeichnet</translation>
  </message>
  <message>
   <source>{:.3f} s, {:.1f} m</source>
   <translation>{:.3f} s, {:.1f} m</translation>
  </message>
  <message>
   <source>{} mean {}
most {}</source>
   <translation>{} Mittel {}
meist {}</translation>
  </message>
 </context>
 <context>
  <name>DetailsTabs</name>
  <message>
   <source>Details of the verdict</source>
   <translation>Einzelheiten zum Ergebnis</translation>
  </message>
  <message>
   <source>Everything the program knows to measure could be measured on this recording.</source>
   <translation>Alles, was das Programm messen kann, war an dieser Aufzeichnung messbar.</translation>
  </message>
  <message>
   <source>Evidence</source>
   <translation>Befunde</translation>
  </message>
  <message>
   <source>How the recording was read</source>
   <translation>Wie die Aufzeichnung gelesen wurde</translation>
  </message>
  <message>
   <source>If so</source>
   <translation>Wenn ja</translation>
  </message>
  <message>
   <source>Judged with</source>
   <translation>Beurteilt mit</translation>
  </message>
  <message>
   <source>Next checks</source>
   <translation>Prüfungen</translation>
  </message>
  <message>
   <source>No further check in the rule book would change this verdict.</source>
   <translation>Keine weitere Prüfung des Regelwerks würde das Ergebnis ändern.</translation>
  </message>
  <message>
   <source>Not decided yet, and what would tell them apart.</source>
   <translation>Noch nicht entschieden, und was es klären würde.</translation>
  </message>
  <message>
   <source>Not shown</source>
   <translation>Nicht messbar</translation>
  </message>
  <message>
   <source>Not shown ({})</source>
   <translation>Nicht messbar ({})</translation>
  </message>
  <message>
   <source>Nothing unusual was noticed while reading.</source>
   <translation>Beim Lesen fiel nichts auf.</translation>
  </message>
  <message>
   <source>Noticed while reading</source>
   <translation>Beim Lesen aufgefallen</translation>
  </message>
  <message>
   <source>Ordered by what they tell for the minutes they take.</source>
   <translation>Geordnet nach Aussage je Minute Aufwand.</translation>
  </message>
  <message>
   <source>Recording</source>
   <translation>Aufzeichnung</translation>
  </message>
  <message>
   <source>Recording ({})</source>
   <translation>Aufzeichnung ({})</translation>
  </message>
  <message>
   <source>Taken for the wheels</source>
   <translation>Als Räder genommen</translation>
  </message>
  <message>
   <source>These could not be measured on this recording. Driving as said below would help.</source>
   <translation>Dies war an dieser Aufzeichnung nicht messbar. Eine Fahrt wie unten beschrieben würde helfen.</translation>
  </message>
  <message>
   <source>What this recording cannot show</source>
   <translation>Was diese Aufzeichnung nicht zeigen kann</translation>
  </message>
  <message>
   <source>What this recording cannot show, and which driving would help</source>
   <translation>Was diese Aufzeichnung nicht zeigen kann und welche Fahrt helfen würde</translation>
  </message>
  <message>
   <source>program {}, rule book {}</source>
   <translation>Programm {}, Regelwerk {}</translation>
  </message>
 </context>
 <context>
  <name>EvidenceDelegate</name>
  <message>
   <source>Against</source>
   <translation>Dagegen</translation>
  </message>
  <message>
   <source>For</source>
   <translation>Dafür</translation>
  </message>
 </context>
 <context>
  <name>EvidenceModel</name>
  <message>
   <source>Against</source>
   <translation>Dagegen</translation>
  </message>
  <message>
   <source>Click or press Enter to see it in the plots; again for its next place.</source>
   <translation>Klicken oder Enter zeigt die Stelle in den Kurven; noch einmal die nächste.</translation>
  </message>
  <message>
   <source>For</source>
   <translation>Dafür</translation>
  </message>
  <message>
   <source>This does not come from the recording.</source>
   <translation>Dies stammt nicht aus der Aufzeichnung.</translation>
  </message>
 </context>
 <context>
  <name>EvidencePanel</name>
  <message>
   <source>Evidence for and against the chosen cause</source>
   <translation>Befunde für und gegen die gewählte Ursache</translation>
  </message>
  <message>
   <source>No finding speaks clearly for or against this cause.</source>
   <translation>Kein Befund spricht deutlich für oder gegen diese Ursache.</translation>
  </message>
  <message>
   <source>{}: {}. A line with → jumps to its seconds.</source>
   <translation>{}: {}. Eine Zeile mit → führt zu ihren Sekunden.</translation>
  </message>
 </context>
 <context>
  <name>ExerciseDebrief</name>
  <message>
   <source>Add to a class sheet…</source>
   <translation>In Klassenliste eintragen…</translation>
  </message>
  <message>
   <source>Another exercise</source>
   <translation>Andere Übung</translation>
  </message>
  <message>
   <source>Another exercise  (Esc)</source>
   <translation>Andere Übung  (Esc)</translation>
  </message>
  <message>
   <source>Name of the trainee</source>
   <translation>Name der übenden Person</translation>
  </message>
  <message>
   <source>Open in the road test</source>
   <translation>In der Probefahrt öffnen</translation>
  </message>
  <message>
   <source>Save this exercise…</source>
   <translation>Diese Übung speichern…</translation>
  </message>
  <message>
   <source>Truth and score</source>
   <translation>Auflösung und Punkte</translation>
  </message>
  <message>
   <source>What the program would have done</source>
   <translation>Vorgehen des Programms</translation>
  </message>
  <message>
   <source>What you did</source>
   <translation>Eigenes Vorgehen</translation>
  </message>
 </context>
 <context>
  <name>ExerciseLibrary</name>
  <message>
   <source>&amp;Cause</source>
   <translation>&amp;Ursache</translation>
  </message>
  <message>
   <source>&amp;Drive, by number</source>
   <translation>&amp;Fahrt, Nummer</translation>
  </message>
  <message>
   <source>&amp;Length</source>
   <translation>&amp;Länge</translation>
  </message>
  <message>
   <source>&amp;Wheel</source>
   <translation>&amp;Rad</translation>
  </message>
  <message>
   <source>A car with a hidden fault. Watch its road test, ask and check – every check costs minutes and money – and hand in wheel, cause and how sure you are. Then the truth is told, and what your work was worth against the order in which the program would have gone about it.</source>
   <translation>Ein Fahrzeug mit verborgenem Fehler. Probefahrt ansehen, fragen und prüfen – jede Prüfung kostet Minuten und Geld – und Rad, Ursache und Sicherheit abgeben. Dann kommt die Auflösung, und was die Arbeit wert war gegenüber der Reihenfolge, in der das Programm vorgegangen wäre.</translation>
  </message>
  <message>
   <source>A new car</source>
   <translation>Neues Fahrzeug</translation>
  </message>
  <message>
   <source>Blatant</source>
   <translation>Stark</translation>
  </message>
  <message>
   <source>Ca&amp;r, by number</source>
   <translation>Fahr&amp;zeug, Nummer</translation>
  </message>
  <message>
   <source>Cars of the recordings that come with the program</source>
   <translation>Autos der mitgelieferten Aufzeichnungen</translation>
  </message>
  <message>
   <source>Clear</source>
   <translation>Deutlich</translation>
  </message>
  <message>
   <source>Close  (Esc)</source>
   <translation>Schließen  (Esc)</translation>
  </message>
  <message>
   <source>Exercise</source>
   <translation>Übung</translation>
  </message>
  <message>
   <source>Leave it to chance</source>
   <translation>Dem Zufall überlassen</translation>
  </message>
  <message>
   <source>Make this exercise</source>
   <translation>Diese Übung erstellen</translation>
  </message>
  <message>
   <source>Open a saved exercise…</source>
   <translation>Gespeicherte Übung öffnen…</translation>
  </message>
  <message>
   <source>S&amp;everity</source>
   <translation>&amp;Schwere</translation>
  </message>
  <message>
   <source>Show the answer from the start, to teach with it</source>
   <translation>Die Lösung von Anfang an zeigen, zum Unterrichten</translation>
  </message>
  <message>
   <source>Slight</source>
   <translation>Leicht</translation>
  </message>
  <message>
   <source>Surprise me</source>
   <translation>Überraschung</translation>
  </message>
  <message>
   <source>These recordings are not installed.</source>
   <translation>Diese Aufzeichnungen sind nicht installiert.</translation>
  </message>
  <message>
   <source>or choose what the trainees are to find:</source>
   <translation>oder wählen, was gefunden werden soll:</translation>
  </message>
  <message>
   <source>{:g} minutes</source>
   <translation>{:g} Minuten</translation>
  </message>
 </context>
 <context>
  <name>ExercisePage</name>
  <message>
   <source>Added to {}, which has {} answers now.</source>
   <translation>Eingetragen in {}, jetzt mit {} Antworten.</translation>
  </message>
  <message>
   <source>Choose a class sheet; a line is added to an old one</source>
   <translation>Klassenliste wählen; eine vorhandene bekommt eine Zeile mehr</translation>
  </message>
  <message>
   <source>Class sheets (*.csv)</source>
   <translation>Klassenlisten (*.csv)</translation>
  </message>
  <message>
   <source>Driving the road test</source>
   <translation>Probefahrt läuft</translation>
  </message>
  <message>
   <source>Exercises (*.exercise.json);;All files (*)</source>
   <translation>Übungen (*.exercise.json);;Alle Dateien (*)</translation>
  </message>
  <message>
   <source>Leave the exercises</source>
   <translation>Übungen verlassen</translation>
  </message>
  <message>
   <source>Open a saved exercise</source>
   <translation>Gespeicherte Übung öffnen</translation>
  </message>
  <message>
   <source>Save the exercise</source>
   <translation>Übung speichern</translation>
  </message>
  <message>
   <source>Saved as {}; the answer cannot be read in it by accident.</source>
   <translation>Gespeichert als {}; die Lösung ist darin nicht aus Versehen lesbar.</translation>
  </message>
  <message>
   <source>Scoring your answer</source>
   <translation>Antwort wird bewertet</translation>
  </message>
  <message>
   <source>What you found will be forgotten. Press “Give up” once more to do so.</source>
   <translation>Das Gefundene geht verloren. Noch einmal „Aufgeben“ drücken, um aufzugeben.</translation>
  </message>
  <message>
   <source>Write the name of the trainee first.</source>
   <translation>Zuerst den Namen der übenden Person eintragen.</translation>
  </message>
 </context>
 <context>
  <name>ExerciseWork</name>
  <message>
   <source>Built in: {}</source>
   <translation>Eingebaut: {}</translation>
  </message>
  <message>
   <source>Drive, or stand still</source>
   <translation>Fahren oder anhalten</translation>
  </message>
  <message>
   <source>Found so far</source>
   <translation>Bisher gefunden</translation>
  </message>
  <message>
   <source>Give the exercise up</source>
   <translation>Übung aufgeben</translation>
  </message>
  <message>
   <source>Give up  (Esc)</source>
   <translation>Aufgeben  (Esc)</translation>
  </message>
  <message>
   <source>Go to the answer</source>
   <translation>Zur Antwort</translation>
  </message>
  <message>
   <source>Go to the checks</source>
   <translation>Zu den Prüfungen</translation>
  </message>
  <message>
   <source>Nothing yet.</source>
   <translation>Noch nichts.</translation>
  </message>
  <message>
   <source>One sample back</source>
   <translation>Ein Messwert zurück</translation>
  </message>
  <message>
   <source>One sample on</source>
   <translation>Ein Messwert vor</translation>
  </message>
  <message>
   <source>Replay faster</source>
   <translation>Wiedergabe schneller</translation>
  </message>
  <message>
   <source>Replay slower</source>
   <translation>Wiedergabe langsamer</translation>
  </message>
  <message>
   <source>Save this exercise…</source>
   <translation>Diese Übung speichern…</translation>
  </message>
  <message>
   <source>The driver says</source>
   <translation>Der Fahrer sagt</translation>
  </message>
 </context>
 <context>
  <name>ExperiencePanel</name>
  <message>
   <source>A car that was proven right</source>
   <translation>Ein Fahrzeug mit bestätigter Ursache</translation>
  </message>
  <message>
   <source>Below stands the verdict without and with them. The other pages show it without; the option “experience” of the command “rank” counts them.</source>
   <translation>Unten steht das Ergebnis ohne und mit ihnen. Die anderen Seiten zeigen es ohne; die Option „experience“ des Befehls „rank“ zählt sie mit.</translation>
  </message>
  <message>
   <source>Cars</source>
   <translation>Fahrzeuge</translation>
  </message>
  <message>
   <source>Cars counted</source>
   <translation>Gezählte Fahrzeuge</translation>
  </message>
  <message>
   <source>Cars that are alike</source>
   <translation>Gleichartige Fahrzeuge</translation>
  </message>
  <message>
   <source>Cause</source>
   <translation>Ursache</translation>
  </message>
  <message>
   <source>Count this car</source>
   <translation>Dieses Fahrzeug zählen</translation>
  </message>
  <message>
   <source>Let these cars count</source>
   <translation>Diese Autos zählen lassen</translation>
  </message>
  <message>
   <source>Remark</source>
   <translation>Bemerkung</translation>
  </message>
  <message>
   <source>Starting figures</source>
   <translation>Ausgangswerte</translation>
  </message>
  <message>
   <source>Take the chosen car back</source>
   <translation>Gewähltes Fahrzeug zurücknehmen</translation>
  </message>
  <message>
   <source>Verdict</source>
   <translation>Ergebnis</translation>
  </message>
  <message>
   <source>What it really was</source>
   <translation>Was es wirklich war</translation>
  </message>
  <message>
   <source>Wheel</source>
   <translation>Rad</translation>
  </message>
  <message>
   <source>after</source>
   <translation>nachher</translation>
  </message>
  <message>
   <source>before</source>
   <translation>vorher</translation>
  </message>
  <message>
   <source>none named</source>
   <translation>keine genannt</translation>
  </message>
  <message>
   <source>with</source>
   <translation>mit</translation>
  </message>
  <message>
   <source>without</source>
   <translation>ohne</translation>
  </message>
 </context>
 <context>
  <name>FileDialogs</name>
  <message>
   <source>Choose a signal database</source>
   <translation>Signaldatenbank wählen</translation>
  </message>
  <message>
   <source>Open a recording (all its parts)</source>
   <translation>Aufzeichnung öffnen (alle Teile)</translation>
  </message>
  <message>
   <source>Recordings ({});;All files (*)</source>
   <translation>Aufzeichnungen ({});;Alle Dateien (*)</translation>
  </message>
  <message>
   <source>Signal databases ({});;All files (*)</source>
   <translation>Signaldatenbanken ({});;Alle Dateien (*)</translation>
  </message>
 </context>
 <context>
  <name>FindingBand</name>
  <message>
   <source>Back to the finding (F4)</source>
   <translation>Zurück zum Befund (F4)</translation>
  </message>
  <message>
   <source>Next place (F3)</source>
   <translation>Nächste Stelle (F3)</translation>
  </message>
 </context>
 <context>
  <name>InstrumentsPanel</name>
  <message>
   <source>Car</source>
   <translation>Fahrzeug</translation>
  </message>
  <message>
   <source>Every place at which the signal was lost; Enter shows it in the plots.</source>
   <translation>Jede Stelle mit Signalausfall; Enter zeigt sie in den Kurven.</translation>
  </message>
  <message>
   <source>How much of the ripple repeats how often in a turn of the wheel.</source>
   <translation>Welcher Teil der Welligkeit sich wie oft je Umdrehung wiederholt.</translation>
  </message>
  <message>
   <source>How well the wheels were recorded, and what had to be repaired.</source>
   <translation>Wie gut die Räder aufgezeichnet sind und was ausgebessert werden musste.</translation>
  </message>
  <message>
   <source>Instruments of the wheel</source>
   <translation>Auswertungen des Rades</translation>
  </message>
  <message>
   <source>Look at the {} wheel</source>
   <translation>Rad {} ansehen</translation>
  </message>
  <message>
   <source>Losses</source>
   <translation>Ausfälle</translation>
  </message>
  <message>
   <source>Orders</source>
   <translation>Ordnungen</translation>
  </message>
  <message>
   <source>Quality</source>
   <translation>Güte</translation>
  </message>
  <message>
   <source>Ring</source>
   <translation>Ring</translation>
  </message>
  <message>
   <source>Side load</source>
   <translation>Seitenlast</translation>
  </message>
  <message>
   <source>What changes when a curve loads or relieves the wheel.</source>
   <translation>Was sich ändert, wenn eine Kurve das Rad be- oder entlastet.</translation>
  </message>
  <message>
   <source>What the recording tells of the car beside its wheels: steering, turning, brake.</source>
   <translation>Was die Aufzeichnung außer den Rädern zeigt: Lenkung, Drehung, Bremse.</translation>
  </message>
  <message>
   <source>What the wheel does at each angle of its turn: speed, losses and bad sectors.</source>
   <translation>Was das Rad bei jedem Winkel seiner Umdrehung tut: Drehzahl, Ausfälle, schadhafte Sektoren.</translation>
  </message>
 </context>
 <context>
  <name>KeyHelp</name>
  <message>
   <source>Copy the picture, offer all ways to copy and save</source>
   <translation>Bild kopieren, alle Wege zum Kopieren und Speichern zeigen</translation>
  </message>
  <message>
   <source>Mark the cursor's place to measure from, remove both</source>
   <translation>Stelle des Cursors als Messanfang merken, beide entfernen</translation>
  </message>
  <message>
   <source>Move along the time</source>
   <translation>Durch die Zeit gehen</translation>
  </message>
  <message>
   <source>Move the cursor by a sample, with Shift by ten</source>
   <translation>Cursor um einen Messwert bewegen, mit Umschalt um zehn</translation>
  </message>
  <message>
   <source>Next drop-out of the wheel looked at, the one before</source>
   <translation>Nächster Ausfall des betrachteten Rades, voriger</translation>
  </message>
  <message>
   <source>Show the place of this finding in the plots; again for its next place</source>
   <translation>Die Stelle dieses Befundes in den Kurven zeigen; noch einmal die nächste</translation>
  </message>
  <message>
   <source>Zoom in, zoom out, show the whole recording</source>
   <translation>Vergrößern, verkleinern, ganze Aufzeichnung zeigen</translation>
  </message>
 </context>
 <context>
  <name>LoadInstrument</name>
  <message>
   <source>Side load</source>
   <translation>Seitenlast</translation>
  </message>
 </context>
 <context>
  <name>LoadingPage</name>
  <message>
   <source>Progress</source>
   <translation>Fortschritt</translation>
  </message>
  <message>
   <source>Reading {}</source>
   <translation>Lese {}</translation>
  </message>
  <message>
   <source>Starting</source>
   <translation>Beginnt</translation>
  </message>
  <message>
   <source>Stop (Esc)</source>
   <translation>Anhalten (Esc)</translation>
  </message>
 </context>
 <context>
  <name>LossesInstrument</name>
  <message>
   <source>Chosen rows, or all, to paste into a spreadsheet (Ctrl+C)</source>
   <translation>Gewählte Zeilen oder alle, zum Einfügen in eine Tabelle (Strg+C)</translation>
  </message>
  <message>
   <source>Copy the table</source>
   <translation>Tabelle kopieren</translation>
  </message>
  <message>
   <source>Enter or a double click shows the place in the plots.</source>
   <translation>Enter oder Doppelklick zeigt die Stelle in den Kurven.</translation>
  </message>
  <message>
   <source>Enter shows a row in the plots.</source>
   <translation>Enter zeigt eine Zeile in den Kurven.</translation>
  </message>
  <message>
   <source>Losses of the wheel</source>
   <translation>Ausfälle des Rades</translation>
  </message>
 </context>
 <context>
  <name>LossesModel</name>
  <message>
   <source>Angle of the ring map at which it begins, where the turn is known.</source>
   <translation>Winkel im Ringbild, bei dem es beginnt, wenn die Drehlage bekannt ist.</translation>
  </message>
  <message>
   <source>At
°</source>
   <translation>Bei
°</translation>
  </message>
  <message>
   <source>Before
{}</source>
   <translation>Davor
{}</translation>
  </message>
  <message>
   <source>Begin
s</source>
   <translation>Beginn
s</translation>
  </message>
  <message>
   <source>Driving</source>
   <translation>Fahrt</translation>
  </message>
  <message>
   <source>How long it lasts.</source>
   <translation>Wie lange es dauert.</translation>
  </message>
  <message>
   <source>Lasts
s</source>
   <translation>Dauer
s</translation>
  </message>
  <message>
   <source>Second of the recording at which it begins.</source>
   <translation>Sekunde der Aufzeichnung, in der es beginnt.</translation>
  </message>
  <message>
   <source>Speed of the wheel at its last sample before.</source>
   <translation>Radgeschwindigkeit beim letzten Messwert davor.</translation>
  </message>
  <message>
   <source>What</source>
   <translation>Was</translation>
  </message>
  <message>
   <source>What the car did.</source>
   <translation>Was das Fahrzeug tat.</translation>
  </message>
  <message>
   <source>What was lost, and whose loss it is.</source>
   <translation>Was ausfiel und wem der Ausfall gehört.</translation>
  </message>
 </context>
 <context>
  <name>MainWindow</name>
  <message>
   <source>Wheel-end triage</source>
   <translation>Radseitige Fehlersuche</translation>
  </message>
 </context>
 <context>
  <name>Menus</name>
  <message>
   <source>&amp;Back to the finding</source>
   <translation>Zurück zum &amp;Befund</translation>
  </message>
  <message>
   <source>&amp;Cars of this workshop…</source>
   <translation>&amp;Autos dieser Werkstatt…</translation>
  </message>
  <message>
   <source>&amp;Close the recording</source>
   <translation>Aufzeichnung s&amp;chließen</translation>
  </message>
  <message>
   <source>&amp;Complaint and checks</source>
   <translation>Bea&amp;nstandung und Prüfungen</translation>
  </message>
  <message>
   <source>&amp;Dark or light colours</source>
   <translation>&amp;Dunkel oder hell</translation>
  </message>
  <message>
   <source>&amp;Earlier</source>
   <translation>&amp;Früher</translation>
  </message>
  <message>
   <source>&amp;Exercise</source>
   <translation>&amp;Übung</translation>
  </message>
  <message>
   <source>&amp;File</source>
   <translation>&amp;Datei</translation>
  </message>
  <message>
   <source>&amp;Help</source>
   <translation>&amp;Hilfe</translation>
  </message>
  <message>
   <source>&amp;Keys</source>
   <translation>&amp;Tasten</translation>
  </message>
  <message>
   <source>&amp;Later</source>
   <translation>&amp;Später</translation>
  </message>
  <message>
   <source>&amp;Next place of this evidence</source>
   <translation>&amp;Nächste Stelle dieses Befundes</translation>
  </message>
  <message>
   <source>&amp;Open a recording…</source>
   <translation>Aufzeichnung ö&amp;ffnen…</translation>
  </message>
  <message>
   <source>&amp;Previous place of this evidence</source>
   <translation>&amp;Vorige Stelle dieses Befundes</translation>
  </message>
  <message>
   <source>&amp;Quit</source>
   <translation>&amp;Beenden</translation>
  </message>
  <message>
   <source>&amp;Remove the marking</source>
   <translation>&amp;Markierung entfernen</translation>
  </message>
  <message>
   <source>&amp;Road test</source>
   <translation>&amp;Probefahrt</translation>
  </message>
  <message>
   <source>&amp;Steps</source>
   <translation>&amp;Schritte</translation>
  </message>
  <message>
   <source>&amp;Stop reading</source>
   <translation>&amp;Lesen anhalten</translation>
  </message>
  <message>
   <source>&amp;Take back what was tried</source>
   <translation>P&amp;robiertes zurücknehmen</translation>
  </message>
  <message>
   <source>&amp;Time</source>
   <translation>&amp;Zeit</translation>
  </message>
  <message>
   <source>&amp;Verdict</source>
   <translation>&amp;Ergebnis</translation>
  </message>
  <message>
   <source>&amp;View</source>
   <translation>&amp;Ansicht</translation>
  </message>
  <message>
   <source>&amp;Whole recording</source>
   <translation>&amp;Ganze Aufzeichnung</translation>
  </message>
  <message>
   <source>Choose a &amp;signal database…</source>
   <translation>&amp;Signaldatenbank wählen…</translation>
  </message>
  <message>
   <source>Complaint and checks</source>
   <translation>Beanstandung und Prüfungen</translation>
  </message>
  <message>
   <source>Copy the va&amp;lues in view</source>
   <translation>Sichtbare &amp;Werte kopieren</translation>
  </message>
  <message>
   <source>Exercise</source>
   <translation>Übung</translation>
  </message>
  <message>
   <source>Go to how it was &amp;read</source>
   <translation>Zur Auf&amp;zeichnung</translation>
  </message>
  <message>
   <source>Go to the &amp;evidence</source>
   <translation>Zu den &amp;Befunden</translation>
  </message>
  <message>
   <source>Go to the &amp;next checks</source>
   <translation>Zu den nächsten &amp;Prüfungen</translation>
  </message>
  <message>
   <source>Go to the &amp;plots</source>
   <translation>Zu den &amp;Kurven</translation>
  </message>
  <message>
   <source>Go to what is not &amp;shown</source>
   <translation>Zu &amp;nicht Messbarem</translation>
  </message>
  <message>
   <source>Go to what may be &amp;wrong</source>
   <translation>Zu den &amp;Ursachen</translation>
  </message>
  <message>
   <source>Lay another recording &amp;over it…</source>
   <translation>Andere Aufzeichnung &amp;darüberlegen…</translation>
  </message>
  <message>
   <source>Read &amp;again</source>
   <translation>&amp;Neu lesen</translation>
  </message>
  <message>
   <source>Read it &amp;differently…</source>
   <translation>&amp;Anders lesen…</translation>
  </message>
  <message>
   <source>Recordings that come with the &amp;program</source>
   <translation>Beil&amp;iegende Aufzeichnungen</translation>
  </message>
  <message>
   <source>Road test and verdict</source>
   <translation>Probefahrt und Ergebnis</translation>
  </message>
  <message>
   <source>Sa&amp;ve the picture…</source>
   <translation>Bild sp&amp;eichern…</translation>
  </message>
  <message>
   <source>Save the val&amp;ues in view…</source>
   <translation>Sichtbare Werte speiche&amp;rn…</translation>
  </message>
  <message>
   <source>Se&amp;ttings…</source>
   <translation>&amp;Einstellungen…</translation>
  </message>
  <message>
   <source>Show or hide the {} wheel</source>
   <translation>Rad {} zeigen oder ausblenden</translation>
  </message>
  <message>
   <source>What &amp;if…</source>
   <translation>&amp;Was wäre, wenn…</translation>
  </message>
  <message>
   <source>Zoom &amp;in</source>
   <translation>Ver&amp;größern</translation>
  </message>
  <message>
   <source>Zoom &amp;out</source>
   <translation>Ver&amp;kleinern</translation>
  </message>
 </context>
 <context>
  <name>PlotCommands</name>
  <message>
   <source>&amp;Copy the picture</source>
   <translation>&amp;Bild kopieren</translation>
  </message>
  <message>
   <source>&amp;Save the picture…</source>
   <translation>Bild &amp;speichern…</translation>
  </message>
  <message>
   <source>C&amp;opy the values in view</source>
   <translation>Sichtbare &amp;Werte kopieren</translation>
  </message>
  <message>
   <source>Picture copied.</source>
   <translation>Bild kopiert.</translation>
  </message>
  <message>
   <source>S&amp;ave the values in view…</source>
   <translation>Sichtbare Werte s&amp;peichern…</translation>
  </message>
  <message>
   <source>Save the picture</source>
   <translation>Bild speichern</translation>
  </message>
  <message>
   <source>Save the values in view</source>
   <translation>Sichtbare Werte speichern</translation>
  </message>
  <message>
   <source>Saved: {}</source>
   <translation>Gespeichert: {}</translation>
  </message>
  <message>
   <source>Values copied.</source>
   <translation>Werte kopiert.</translation>
  </message>
 </context>
 <context>
  <name>QualityInstrument</name>
  <message>
   <source>Quality of the recording, wheel by wheel</source>
   <translation>Güte der Aufzeichnung, Rad für Rad</translation>
  </message>
  <message>
   <source>What was noticed and repaired</source>
   <translation>Was auffiel und ausgebessert wurde</translation>
  </message>
 </context>
 <context>
  <name>RankingModel</name>
  <message>
   <source>Cause</source>
   <translation>Ursache</translation>
  </message>
  <message>
   <source>Probability</source>
   <translation>Wahrscheinlichkeit</translation>
  </message>
  <message>
   <source>Where</source>
   <translation>Wo</translation>
  </message>
 </context>
 <context>
  <name>RankingPanel</name>
  <message>
   <source>Ranked causes</source>
   <translation>Ursachen nach Rang</translation>
  </message>
  <message>
   <source>What may be wrong</source>
   <translation>Was defekt sein kann</translation>
  </message>
 </context>
 <context>
  <name>ReadingForm</name>
  <message>
   <source>Read it this way</source>
   <translation>So lesen</translation>
  </message>
  <message>
   <source>Signal of the wheel {}</source>
   <translation>Signal des Rades {}</translation>
  </message>
  <message>
   <source>Tyre radius</source>
   <translation>Reifenradius</translation>
  </message>
  <message>
   <source>Tyre radius in metres</source>
   <translation>Reifenradius in Metern</translation>
  </message>
  <message>
   <source>Unit of the speeds</source>
   <translation>Einheit der Geschwindigkeiten</translation>
  </message>
  <message>
   <source>– choose –</source>
   <translation>– wählen –</translation>
  </message>
  <message>
   <source>– choose, or type a name –</source>
   <translation>– wählen oder Namen eingeben –</translation>
  </message>
  <message>
   <source>– state –</source>
   <translation>– angeben –</translation>
  </message>
 </context>
 <context>
  <name>RecentList</name>
  <message>
   <source>Clear this list</source>
   <translation>Liste leeren</translation>
  </message>
  <message>
   <source>Opened of late</source>
   <translation>Zuletzt geöffnet</translation>
  </message>
 </context>
 <context>
  <name>RefusalPage</name>
  <message>
   <source>Choose a signal database (DBC)…</source>
   <translation>Signaldatenbank (DBC) wählen…</translation>
  </message>
  <message>
   <source>File</source>
   <translation>Datei</translation>
  </message>
  <message>
   <source>Open another recording…</source>
   <translation>Andere Aufzeichnung öffnen…</translation>
  </message>
  <message>
   <source>Place</source>
   <translation>Stelle</translation>
  </message>
  <message>
   <source>Read it as before</source>
   <translation>Wie zuvor lesen</translation>
  </message>
  <message>
   <source>Reason</source>
   <translation>Grund</translation>
  </message>
  <message>
   <source>Try again</source>
   <translation>Noch einmal</translation>
  </message>
  <message>
   <source>What to do</source>
   <translation>Was zu tun ist</translation>
  </message>
 </context>
 <context>
  <name>ReplayPlot</name>
  <message>
   <source>Drive  (P)</source>
   <translation>Fahren  (P)</translation>
  </message>
  <message>
   <source>One sample back</source>
   <translation>Ein Messwert zurück</translation>
  </message>
  <message>
   <source>One sample back (,)</source>
   <translation>Ein Messwert zurück (,)</translation>
  </message>
  <message>
   <source>One sample on</source>
   <translation>Ein Messwert vor</translation>
  </message>
  <message>
   <source>One sample on (.)</source>
   <translation>Ein Messwert vor (.)</translation>
  </message>
  <message>
   <source>Place in the drive</source>
   <translation>Stelle der Fahrt</translation>
  </message>
  <message>
   <source>Seconds of the drive in one second (+ faster, - slower)</source>
   <translation>Sekunden der Fahrt je Sekunde (+ schneller, - langsamer)</translation>
  </message>
  <message>
   <source>Speed of the replay</source>
   <translation>Tempo der Wiedergabe</translation>
  </message>
  <message>
   <source>Speed, {}</source>
   <translation>Geschwindigkeit, {}</translation>
  </message>
  <message>
   <source>Speeds of the four wheels so far</source>
   <translation>Geschwindigkeiten der vier Räder bis hier</translation>
  </message>
  <message>
   <source>Stand still  (P)</source>
   <translation>Anhalten  (P)</translation>
  </message>
 </context>
 <context>
  <name>RingDial</name>
  <message>
   <source>One turn of the wheel, averaged over the drive: how its speed swings, where on the ring samples are lost, and the sectors that lose them.</source>
   <translation>Eine Radumdrehung, über die Fahrt gemittelt: wie die Drehzahl schwankt, wo am Ring Messwerte ausfallen, und in welchen Sektoren.</translation>
  </message>
  <message>
   <source>Ring map of the {} wheel</source>
   <translation>Ringbild des Rades {}</translation>
  </message>
 </context>
 <context>
  <name>RingInstrument</name>
  <message>
   <source>Ring map</source>
   <translation>Ringbild</translation>
  </message>
  <message>
   <source>inner track: samples lost or off, {:g} % at its edge</source>
   <translation>innere Bahn: Messwerte ausgefallen oder falsch, {:g} % am Rand</translation>
  </message>
  <message>
   <source>outer track: speed off its mean, ±{:g} % at its edges</source>
   <translation>äußere Bahn: Drehzahl gegen ihr Mittel, ±{:g} % an den Rändern</translation>
  </message>
  <message>
   <source>rim: bad sectors by number, bars where drops begin</source>
   <translation>Rand: schadhafte Sektoren mit Nummer, Striche am Beginn von Ausfällen</translation>
  </message>
 </context>
 <context>
  <name>RingSketch</name>
  <message>
   <source>Sketch of the fault: {}</source>
   <translation>Skizze des Fehlers: {}</translation>
  </message>
  <message>
   <source>all sound</source>
   <translation>alles in Ordnung</translation>
  </message>
  <message>
   <source>bearing</source>
   <translation>Radlager</translation>
  </message>
  <message>
   <source>encoder ring</source>
   <translation>Encoderring</translation>
  </message>
  <message>
   <source>gap</source>
   <translation>Luftspalt</translation>
  </message>
  <message>
   <source>lead</source>
   <translation>Leitung</translation>
  </message>
  <message>
   <source>leads exchanged</source>
   <translation>Leitungen vertauscht</translation>
  </message>
  <message>
   <source>sensor</source>
   <translation>Sensor</translation>
  </message>
  <message>
   <source>shared by all</source>
   <translation>allen gemeinsam</translation>
  </message>
  <message>
   <source>tyre</source>
   <translation>Reifen</translation>
  </message>
 </context>
 <context>
  <name>SampleList</name>
  <message>
   <source>To try it on: recordings that come with the program</source>
   <translation>Zum Ausprobieren: Aufzeichnungen, die dem Programm beiliegen</translation>
  </message>
 </context>
 <context>
  <name>ScrollingColumn</name>
  <message>
   <source>Not measurable on this recording</source>
   <translation>An dieser Aufzeichnung nicht messbar</translation>
  </message>
  <message>
   <source>Would help: {}</source>
   <translation>Helfen würde: {}</translation>
  </message>
 </context>
 <context>
  <name>SettingsPanel</name>
  <message>
   <source>Another language is taken up when the program starts again. Findings, checks and cautions stay English.</source>
   <translation>Eine andere Sprache gilt ab dem nächsten Start des Programms. Befunde, Prüfungen und Warnhinweise bleiben englisch.</translation>
  </message>
  <message>
   <source>Colours</source>
   <translation>Farben</translation>
  </message>
  <message>
   <source>Kept in {}, a file that can be read and mended by hand.</source>
   <translation>Gespeichert in {}, einer Datei, die von Hand gelesen und berichtigt werden kann.</translation>
  </message>
  <message>
   <source>Language</source>
   <translation>Sprache</translation>
  </message>
  <message>
   <source>Nothing is kept after this window is closed.</source>
   <translation>Nach dem Schließen des Fensters wird nichts behalten.</translation>
  </message>
  <message>
   <source>Numbers are written the same in every language: a point before the decimals, no sign between thousands.</source>
   <translation>Zahlen werden in jeder Sprache gleich geschrieben: Punkt vor den Dezimalen, kein Zeichen zwischen Tausendern.</translation>
  </message>
  <message>
   <source>Set all as they came with the program</source>
   <translation>Alles wie ausgeliefert einstellen</translation>
  </message>
  <message>
   <source>Size of texts</source>
   <translation>Schriftgröße</translation>
  </message>
  <message>
   <source>Speeds in</source>
   <translation>Geschwindigkeit in</translation>
  </message>
  <message>
   <source>as the system</source>
   <translation>wie das System</translation>
  </message>
  <message>
   <source>dark</source>
   <translation>dunkel</translation>
  </message>
  <message>
   <source>light</source>
   <translation>hell</translation>
  </message>
 </context>
 <context>
  <name>SidePanel</name>
  <message>
   <source>Close (Esc)</source>
   <translation>Schließen (Esc)</translation>
  </message>
 </context>
 <context>
  <name>SideSheets</name>
  <message>
   <source>Cars of this workshop</source>
   <translation>Autos dieser Werkstatt</translation>
  </message>
  <message>
   <source>Keys</source>
   <translation>Tasten</translation>
  </message>
  <message>
   <source>Settings</source>
   <translation>Einstellungen</translation>
  </message>
  <message>
   <source>What if</source>
   <translation>Was wäre, wenn</translation>
  </message>
 </context>
 <context>
  <name>SpectrumInstrument</name>
  <message>
   <source>Amplitude, % of the speed</source>
   <translation>Amplitude, % der Geschwindigkeit</translation>
  </message>
  <message>
   <source>Order spectrum</source>
   <translation>Ordnungsspektrum</translation>
  </message>
  <message>
   <source>Order spectrum of the {} wheel</source>
   <translation>Ordnungsspektrum des Rades {}</translation>
  </message>
  <message>
   <source>Ripple of the wheel's speed sorted by how often it repeats in a turn. What sits on the wheel stands at whole numbers; a bearing cage would stand below 1.</source>
   <translation>Welligkeit der Raddrehzahl, geordnet nach Wiederholungen je Umdrehung. Was am Rad sitzt, steht bei ganzen Zahlen; ein Lagerkäfig stünde unter 1.</translation>
  </message>
  <message>
   <source>Times in a metre</source>
   <translation>Male je Meter</translation>
  </message>
  <message>
   <source>Times in a turn</source>
   <translation>Male je Umdrehung</translation>
  </message>
  <message>
   <source>amplitude; a ring marks what repeats with the turn</source>
   <translation>Amplitude; ein Kreis markiert, was sich mit der Umdrehung wiederholt</translation>
  </message>
  <message>
   <source>reached by chance in 1 of 100 recordings</source>
   <translation>zufällig erreicht in 1 von 100 Aufzeichnungen</translation>
  </message>
  <message>
   <source>usual level around it</source>
   <translation>üblicher Pegel ringsum</translation>
  </message>
  <message>
   <source>where a bearing cage would show, 0.35 to 0.48</source>
   <translation>wo ein Lagerkäfig stünde, 0.35 bis 0.48</translation>
  </message>
 </context>
 <context>
  <name>SpeedPlots</name>
  <message>
   <source>Arrows move along the time, plus and minus zoom, Home shows the whole recording. Comma and full stop move the cursor by a sample, with Shift by ten; M marks its place, Delete removes it. N and Shift N go to the drop-outs of the wheel looked at.</source>
   <translation>Pfeiltasten gehen durch die Zeit, Plus und Minus zoomen, Pos1 zeigt die ganze Aufzeichnung. Komma und Punkt bewegen den Cursor um einen Messwert, mit Umschalt um zehn; M merkt die Stelle, Entf entfernt sie. N und Umschalt N gehen zu den Ausfällen des betrachteten Rades.</translation>
  </message>
  <message>
   <source>Divergence, %</source>
   <translation>Abweichung, %</translation>
  </message>
  <message>
   <source>Driving</source>
   <translation>Fahrt</translation>
  </message>
  <message>
   <source>Lost</source>
   <translation>Ausfall</translation>
  </message>
  <message>
   <source>Seconds of the recording</source>
   <translation>Sekunden der Aufzeichnung</translation>
  </message>
  <message>
   <source>Speed, {}</source>
   <translation>Geschwindigkeit, {}</translation>
  </message>
  <message>
   <source>Wheel speeds and divergences over time</source>
   <translation>Radgeschwindigkeiten und Abweichungen über der Zeit</translation>
  </message>
  <message>
   <source>{} – place {} of {}</source>
   <translation>{} – Stelle {} von {}</translation>
  </message>
  <message>
   <source>{}, seconds {}</source>
   <translation>{}, Sekunden {}</translation>
  </message>
  <message>
   <source>{}: no drop-out after this</source>
   <translation>{}: danach kein Ausfall</translation>
  </message>
  <message>
   <source>{}: no drop-out before this</source>
   <translation>{}: davor kein Ausfall</translation>
  </message>
 </context>
 <context>
  <name>StartPage</name>
  <message>
   <source>A simulated car with a hidden fault: order checks, name corner and cause, and see what it was worth. For one person or a class.</source>
   <translation>Ein simuliertes Fahrzeug mit verborgenem Fehler: Prüfungen bestellen, Radecke und Ursache nennen, sehen, was es wert war. Für eine Person oder eine Klasse.</translation>
  </message>
  <message>
   <source>One question at a time about the complaint and at the car, with large buttons for dirty hands. A recording can be opened later.</source>
   <translation>Eine Frage nach der anderen, zur Beanstandung und am Fahrzeug, mit großen Tasten für schmutzige Hände. Eine Aufzeichnung kann später dazukommen.</translation>
  </message>
  <message>
   <source>Open a recording…</source>
   <translation>Aufzeichnung öffnen…</translation>
  </message>
  <message>
   <source>Open the recording of a road test with the four wheel speeds: which corner is suspected, why, and what to check next, before anything comes off the car. Or drop it on this window, all its parts at once, with a signal database (DBC) when it needs one.</source>
   <translation>Aufzeichnung einer Probefahrt mit den vier Radgeschwindigkeiten öffnen: welche Radecke verdächtig ist, warum, und was als Nächstes zu prüfen ist, bevor etwas zerlegt wird. Oder auf dieses Fenster ziehen, alle Teile zugleich, mit Signaldatenbank (DBC), wenn nötig.</translation>
  </message>
  <message>
   <source>Start an exercise</source>
   <translation>Übung beginnen</translation>
  </message>
  <message>
   <source>The car is here</source>
   <translation>Das Fahrzeug ist da</translation>
  </message>
  <message>
   <source>There is a recording</source>
   <translation>Eine Aufzeichnung liegt vor</translation>
  </message>
  <message>
   <source>There is time to learn</source>
   <translation>Es ist Zeit zum Lernen</translation>
  </message>
  <message>
   <source>Walk a complaint</source>
   <translation>Beanstandung durchgehen</translation>
  </message>
  <message>
   <source>Which wheel end is at fault?</source>
   <translation>An welchem Rad sitzt der Fehler?</translation>
  </message>
  <message>
   <source>{} will be used for the recording that you open next.</source>
   <translation>{} wird für die nächste geöffnete Aufzeichnung verwendet.</translation>
  </message>
 </context>
 <context>
  <name>StepBar</name>
  <message>
   <source>Exercise</source>
   <translation>Übung</translation>
  </message>
 </context>
 <context>
  <name>StepButton</name>
  <message>
   <source>on the screen</source>
   <translation>auf dem Bildschirm</translation>
  </message>
 </context>
 <context>
  <name>TrialBand</name>
  <message>
   <source>Take it back (Ctrl+Z)</source>
   <translation>Zurücknehmen (Strg+Z)</translation>
  </message>
  <message>
   <source>What if: {} – not recorded</source>
   <translation>Was wäre, wenn: {} – nicht eingetragen</translation>
  </message>
 </context>
 <context>
  <name>VerdictHeader</name>
  <message>
   <source>Try an answer to a check without recording it</source>
   <translation>Eine Antwort auf eine Prüfung probieren, ohne sie einzutragen</translation>
  </message>
  <message>
   <source>What if…</source>
   <translation>Was wäre, wenn…</translation>
  </message>
 </context>
 <context>
  <name>WhatIfPanel</name>
  <message>
   <source>Answer</source>
   <translation>Antwort</translation>
  </message>
  <message>
   <source>Check</source>
   <translation>Prüfung</translation>
  </message>
  <message>
   <source>Try it</source>
   <translation>Probieren</translation>
  </message>
  <message>
   <source>What would an answer make of the verdict? Nothing of this is recorded.</source>
   <translation>Was würde eine Antwort am Ergebnis ändern? Nichts davon wird eingetragen.</translation>
  </message>
  <message>
   <source>Wheel</source>
   <translation>Rad</translation>
  </message>
  <message>
   <source>none named</source>
   <translation>keine genannt</translation>
  </message>
 </context>
 <context>
  <name>_CornerRow</name>
  <message>
   <source>Which wheel, if one is meant:</source>
   <translation>Welches Rad, falls eines gemeint ist:</translation>
  </message>
 </context>
 <context>
  <name>_QuestionCard</name>
  <message>
   <source>Keep “{}”  (Enter)</source>
   <translation>„{}“ behalten  (Enter)</translation>
  </message>
  <message>
   <source>Measured value with its unit</source>
   <translation>Messwert mit Einheit</translation>
  </message>
  <message>
   <source>Understood, and kept to  (Enter)</source>
   <translation>Verstanden, wird eingehalten  (Enter)</translation>
  </message>
 </context>
 <context>
  <name>_RankingCard</name>
  <message>
   <source>Doubt settled</source>
   <translation>Zweifel geklärt</translation>
  </message>
  <message>
   <source>Most probable now</source>
   <translation>Jetzt am wahrscheinlichsten</translation>
  </message>
 </context>
 <context>
  <name>_WaitingCard</name>
  <message>
   <source>Progress</source>
   <translation>Fortschritt</translation>
  </message>
  <message>
   <source>Starting</source>
   <translation>Beginnt</translation>
  </message>
  <message>
   <source>Stop  (Esc)</source>
   <translation>Anhalten  (Esc)</translation>
  </message>
  <message>
   <source>Stop the work</source>
   <translation>Arbeit anhalten</translation>
  </message>
 </context>
 <context>
  <name>_WheelRow</name>
  <message>
   <source>Checks at</source>
   <translation>Prüfungen an</translation>
  </message>
 </context>
</TS>
