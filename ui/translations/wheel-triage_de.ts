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
   <translation>Fehlt</translation>
  </message>
  <message>
   <source>Read from</source>
   <translation>Gelesen aus</translation>
  </message>
  <message>
   <source>Samples</source>
   <translation>Werte</translation>
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
   <source>Cost or answer</source>
   <translation>Kosten oder Antwort</translation>
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
   <translation>den Weg</translation>
  </message>
  <message>
   <source>time</source>
   <translation>die Zeit</translation>
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
größte {}</translation>
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
   <source>A car whose repair was proven</source>
   <translation>Ein Auto, dessen Reparatur nachgewiesen wurde</translation>
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
  <name>InstrumentTab</name>
  <message>
   <source>It could not be worked out: {}</source>
   <translation>Es ließ sich nicht ermitteln: {}</translation>
  </message>
  <message>
   <source>Working it out. The recording is very long.</source>
   <translation>Wird ermittelt. Die Aufzeichnung ist sehr lang.</translation>
  </message>
 </context>
 <context>
  <name>InstrumentsPanel</name>
  <message>
   <source>Car</source>
   <translation>Fahrzeug</translation>
  </message>
  <message>
   <source>Copy or save…</source>
   <translation>Kopieren oder speichern…</translation>
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
   <source>Comma, full stop</source>
   <translation>Komma, Punkt</translation>
  </message>
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
   <source>Enter or a double click shows the place in the plots.</source>
   <translation>Enter oder Doppelklick zeigt die Stelle in den Kurven.</translation>
  </message>
  <message>
   <source>Enter shows a row in the plots: a drop-out as a high mark, a dip as a low one.</source>
   <translation>Enter zeigt eine Zeile in den Kurven: einen Ausfall als hohe Marke, einen Einbruch als niedrige.</translation>
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
   <source>Copy or save the &amp;instrument…</source>
   <translation>&amp;Instrument kopieren oder speichern…</translation>
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
   <translation>Tempo, {}</translation>
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
   <source>Another language is taken up when the program starts again. Files and the command line stay English.</source>
   <translation>Eine andere Sprache gilt ab dem nächsten Start des Programms. Dateien und Befehlszeile bleiben englisch.</translation>
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
   <translation>Tempo, {}</translation>
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
  <name>TablePicture</name>
  <message>
   <source>and {} more</source>
   <translation>und {} weitere</translation>
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
 <context>
  <name>access.brake-off</name>
  <message>
   <source>wheel and brake taken off</source>
   <translation>Rad und Bremse abgebaut</translation>
  </message>
 </context>
 <context>
  <name>access.cabin</name>
  <message>
   <source>parked, from the seat</source>
   <translation>geparkt, vom Sitz aus</translation>
  </message>
 </context>
 <context>
  <name>access.hub-out</name>
  <message>
   <source>hub unit taken out</source>
   <translation>Nabeneinheit ausgebaut</translation>
  </message>
 </context>
 <context>
  <name>access.lifted</name>
  <message>
   <source>wheel off the ground</source>
   <translation>Rad frei gehoben</translation>
  </message>
 </context>
 <context>
  <name>access.on-ground</name>
  <message>
   <source>parked, beside the car</source>
   <translation>geparkt, neben dem Fahrzeug</translation>
  </message>
 </context>
 <context>
  <name>access.road</name>
  <message>
   <source>a test drive</source>
   <translation>eine Probefahrt</translation>
  </message>
 </context>
 <context>
  <name>access.sensor-out</name>
  <message>
   <source>wheel off the ground and sensor taken out</source>
   <translation>Rad frei gehoben und Sensor ausgebaut</translation>
  </message>
 </context>
 <context>
  <name>access.wheel-off</name>
  <message>
   <source>wheel taken off</source>
   <translation>Rad abgenommen</translation>
  </message>
 </context>
 <context>
  <name>cause.air-gap</name>
  <message>
   <source>Clean the seat and fit the sensor so that it lies flat; check that sensor and encoder belong together.</source>
   <translation>Sitz reinigen und den Sensor so einbauen, dass er plan anliegt; prüfen, ob Sensor und Encoderring zusammengehören.</translation>
  </message>
  <message>
   <source>Gap too large</source>
   <translation>Luftspalt zu groß</translation>
  </message>
  <message>
   <source>Look at the sensor's seat and fastening.</source>
   <translation>Sitz und Befestigung des Sensors ansehen.</translation>
  </message>
  <message>
   <source>The gap between sensor and encoder is too large: not seated, rust under the sensor, or a wrong part.</source>
   <translation>Der Luftspalt zwischen Sensor und Encoderring ist zu groß: nicht richtig eingesetzt, Rost unter dem Sensor oder falsches Teil.</translation>
  </message>
 </context>
 <context>
  <name>cause.bearing-play</name>
  <message>
   <source>Bearing with play</source>
   <translation>Radlager mit Spiel</translation>
  </message>
  <message>
   <source>Replace the bearing or hub unit by the maker's procedure.</source>
   <translation>Lager oder Nabeneinheit nach Vorschrift des Herstellers ersetzen.</translation>
  </message>
  <message>
   <source>Rock the wheel, then measure the play and hold it against the maker's limit.</source>
   <translation>Am Rad rütteln, dann das Spiel messen und mit dem Grenzwert des Herstellers vergleichen.</translation>
  </message>
  <message>
   <source>The wheel bearing has clearance: the hub tilts under side load and the encoder moves under the sensor.</source>
   <translation>Das Radlager hat Spiel: die Nabe kippt unter Seitenkraft, und der Encoderring bewegt sich unter dem Sensor.</translation>
  </message>
 </context>
 <context>
  <name>cause.bearing-roughness</name>
  <message>
   <source>Races or rolling elements are damaged, without play.</source>
   <translation>Laufbahnen oder Wälzkörper sind beschädigt, ohne Spiel.</translation>
  </message>
  <message>
   <source>Replace the bearing or hub unit by the maker's procedure.</source>
   <translation>Lager oder Nabeneinheit nach Vorschrift des Herstellers ersetzen.</translation>
  </message>
  <message>
   <source>Rough bearing</source>
   <translation>Radlager rau</translation>
  </message>
  <message>
   <source>Turn the wheel by hand and listen in curves; the wheel speed rarely shows it.</source>
   <translation>Das Rad von Hand drehen und in Kurven horchen; die Radgeschwindigkeit zeigt es selten.</translation>
  </message>
 </context>
 <context>
  <name>cause.channels-swapped</name>
  <message>
   <source>Put the two connectors or channels right, or mend the recording's mapping.</source>
   <translation>Die beiden Stecker oder Kanäle richtig zuordnen oder die Zuordnung der Aufzeichnung berichtigen.</translation>
  </message>
  <message>
   <source>The wires or channels of two wheels are exchanged.</source>
   <translation>Die Leitungen oder Kanäle zweier Räder sind vertauscht.</translation>
  </message>
  <message>
   <source>Turn one wheel at a time by hand and see which channel answers.</source>
   <translation>Ein Rad nach dem anderen von Hand drehen und sehen, welcher Kanal antwortet.</translation>
  </message>
  <message>
   <source>Two wheels exchanged</source>
   <translation>Zwei Räder vertauscht</translation>
  </message>
 </context>
 <context>
  <name>cause.common-cause</name>
  <message>
   <source>Check supply, earth and bus of the control unit, and the recorder and its connection.</source>
   <translation>Versorgung, Masse und Bus des Steuergeräts prüfen, dazu das Aufzeichnungsgerät und seinen Anschluss.</translation>
  </message>
  <message>
   <source>One cause for all wheels</source>
   <translation>Eine Ursache für alle Räder</translation>
  </message>
  <message>
   <source>Record once more with another recorder or at another connection before touching a wheel.</source>
   <translation>Noch einmal mit einem anderen Gerät oder an einem anderen Anschluss aufzeichnen, bevor ein Rad angefasst wird.</translation>
  </message>
  <message>
   <source>Supply, control unit, bus or recorder: all wheels are hit at the same instant.</source>
   <translation>Versorgung, Steuergerät, Bus oder Aufzeichnungsgerät: alle Räder sind im selben Augenblick betroffen.</translation>
  </message>
 </context>
 <context>
  <name>cause.encoder-damage</name>
  <message>
   <source>Damaged encoder</source>
   <translation>Encoderring beschädigt</translation>
  </message>
  <message>
   <source>Look at the encoder all the way round; a magnetic viewing film shows the poles.</source>
   <translation>Den Encoderring ringsum ansehen; eine Magnetfolie macht die Pole sichtbar.</translation>
  </message>
  <message>
   <source>Replace the encoder, with the bearing or hub where it is part of it.</source>
   <translation>Den Encoderring ersetzen, mit Lager oder Nabe, wo er dazugehört.</translation>
  </message>
  <message>
   <source>The encoder is cracked, chipped or partly demagnetised, or a tooth is bent or missing.</source>
   <translation>Der Encoderring ist gerissen, ausgebrochen oder teilweise entmagnetisiert, oder ein Zahn ist verbogen oder fehlt.</translation>
  </message>
 </context>
 <context>
  <name>cause.encoder-debris</name>
  <message>
   <source>Clean the encoder's face and the sensor's tip, then drive again and compare. No new part unless it returns.</source>
   <translation>Fläche des Encoderrings und Sensorspitze reinigen, dann noch einmal fahren und vergleichen. Kein neues Teil, solange es nicht wiederkommt.</translation>
  </message>
  <message>
   <source>Dirt on the encoder</source>
   <translation>Schmutz auf dem Encoderring</translation>
  </message>
  <message>
   <source>Dirt, metal dust or steel chips sit on the magnetic encoder and weaken or bend its field; they can be cleaned off.</source>
   <translation>Schmutz, Metallabrieb oder Stahlspäne sitzen auf dem magnetischen Encoderring und schwächen oder verbiegen sein Feld; sie lassen sich entfernen.</translation>
  </message>
  <message>
   <source>Look at the encoder through the sensor's bore before anything else comes off.</source>
   <translation>Den Encoderring durch die Sensorbohrung ansehen, bevor etwas anderes abgebaut wird.</translation>
  </message>
 </context>
 <context>
  <name>cause.encoder-mismatch</name>
  <message>
   <source>Count the pulses of one turn and compare with the part list.</source>
   <translation>Die Impulse einer Umdrehung zählen und mit der Teileliste vergleichen.</translation>
  </message>
  <message>
   <source>Encoder of another part</source>
   <translation>Encoderring eines anderen Teils</translation>
  </message>
  <message>
   <source>Fit the hub or encoder that belongs to the car.</source>
   <translation>Nabe oder Encoderring einbauen, die zum Fahrzeug gehören.</translation>
  </message>
  <message>
   <source>The encoder has another number of poles or teeth than the control unit expects.</source>
   <translation>Der Encoderring hat eine andere Zahl von Polen oder Zähnen, als das Steuergerät erwartet.</translation>
  </message>
 </context>
 <context>
  <name>cause.encoder-runout</name>
  <message>
   <source>Encoder runs out of true</source>
   <translation>Encoderring läuft nicht rund</translation>
  </message>
  <message>
   <source>Fit the encoder or hub anew, square and by the maker's procedure.</source>
   <translation>Encoderring oder Nabe neu einbauen, gerade und nach Vorschrift des Herstellers.</translation>
  </message>
  <message>
   <source>The encoder is eccentric or tilted: pressed on crooked, or bent.</source>
   <translation>Der Encoderring sitzt außermittig oder schief: verkantet aufgepresst oder verbogen.</translation>
  </message>
  <message>
   <source>Turn the wheel slowly and watch the gap through the sensor's bore.</source>
   <translation>Das Rad langsam drehen und den Luftspalt durch die Sensorbohrung beobachten.</translation>
  </message>
 </context>
 <context>
  <name>cause.harness-fault</name>
  <message>
   <source>A connector, the lead or a chafed wire loses contact for moments.</source>
   <translation>Ein Stecker, die Leitung oder eine durchgescheuerte Ader verliert für Augenblicke den Kontakt.</translation>
  </message>
  <message>
   <source>Lead or connector fault</source>
   <translation>Fehler an Leitung oder Stecker</translation>
  </message>
  <message>
   <source>Move the lead and the connector with the signal on a screen, from the sensor to the body.</source>
   <translation>Leitung und Stecker bewegen, mit dem Signal auf dem Bildschirm, vom Sensor bis zur Karosserie.</translation>
  </message>
  <message>
   <source>Repair or replace the lead or connector; fasten it as the maker laid it.</source>
   <translation>Leitung oder Stecker instand setzen oder ersetzen; befestigen, wie der Hersteller sie verlegt hat.</translation>
  </message>
 </context>
 <context>
  <name>cause.no-fault-found</name>
  <message>
   <source>No fault found</source>
   <translation>Kein Fehler gefunden</translation>
  </message>
  <message>
   <source>None. Replace nothing on this evidence.</source>
   <translation>Keine. Auf diese Befunde hin nichts ersetzen.</translation>
  </message>
  <message>
   <source>The log and the answers show healthy wheel ends.</source>
   <translation>Aufzeichnung und Antworten zeigen gesunde Räder.</translation>
  </message>
  <message>
   <source>When the complaint goes on, record the driving in which it appears.</source>
   <translation>Wenn die Beanstandung bleibt, die Fahrt aufzeichnen, in der sie auftritt.</translation>
  </message>
 </context>
 <context>
  <name>cause.other</name>
  <message>
   <source>Go on by the maker's procedure; the findings say at which corner and in which driving to look.</source>
   <translation>Nach Vorschrift des Herstellers weitersuchen; die Befunde sagen, an welcher Radecke und bei welcher Fahrt.</translation>
  </message>
  <message>
   <source>None that this rule book knows.</source>
   <translation>Keine, die dieses Regelwerk kennt.</translation>
  </message>
  <message>
   <source>Something else</source>
   <translation>Etwas anderes</translation>
  </message>
  <message>
   <source>Something that is not in this list.</source>
   <translation>Etwas, das nicht in dieser Liste steht.</translation>
  </message>
 </context>
 <context>
  <name>cause.sensor-fault</name>
  <message>
   <source>Measure the sensor's supply and signal before buying it; exchanging the two sensors of the axle proves it.</source>
   <translation>Versorgung und Signal des Sensors messen, bevor er gekauft wird; Tauschen der beiden Sensoren der Achse weist es nach.</translation>
  </message>
  <message>
   <source>Replace the sensor; clean its seat and check the lead up to the connector.</source>
   <translation>Den Sensor ersetzen; seinen Sitz reinigen und die Leitung bis zum Stecker prüfen.</translation>
  </message>
  <message>
   <source>Sensor fault</source>
   <translation>Sensorfehler</translation>
  </message>
  <message>
   <source>The wheel speed sensor itself is dead, dies when warm, is noisy, or switches early and late by chance.</source>
   <translation>Der Raddrehzahlsensor selbst ist tot, fällt bei Wärme aus, rauscht oder schaltet zufällig zu früh und zu spät.</translation>
  </message>
 </context>
 <context>
  <name>cause.tyre-size</name>
  <message>
   <source>Compare size, tread depth and cold pressure of the four tyres.</source>
   <translation>Größe, Profiltiefe und Kaltdruck der vier Reifen vergleichen.</translation>
  </message>
  <message>
   <source>Set the pressure, or fit tyres of one size and like wear on the axle.</source>
   <translation>Druck einstellen oder Reifen einer Größe und gleicher Abnutzung auf der Achse montieren.</translation>
  </message>
  <message>
   <source>The tyre's rolling circumference differs: size, wear or pressure.</source>
   <translation>Der Abrollumfang des Reifens weicht ab: Größe, Abnutzung oder Druck.</translation>
  </message>
  <message>
   <source>Tyre of another size</source>
   <translation>Reifen anderer Größe</translation>
  </message>
 </context>
 <context>
  <name>caution.brake-dust</name>
  <message>
   <source>Treat brake dust as harmful, in old cars as asbestos: wet it at low pressure or use an enclosure with a fine-filter vacuum. Never brush it dry.</source>
   <translation>Bremsstaub als schädlich behandeln, an alten Fahrzeugen wie Asbest: mit wenig Druck benetzen oder eine Einhausung mit Feinfilter-Absaugung verwenden. Niemals trocken abbürsten.</translation>
  </message>
 </context>
 <context>
  <name>caution.driver-drives</name>
  <message>
   <source>The driver drives and does nothing else: start the recording while parked or let a passenger run it. A glance of 5 s at 90 km/h is 125 m without eyes on the road.</source>
   <translation>Der Fahrer fährt und tut sonst nichts: die Aufzeichnung im Stand starten oder vom Beifahrer bedienen lassen. Ein Blick von 5 s bei 90 km/h sind 125 m ohne Augen auf der Straße.</translation>
  </message>
 </context>
 <context>
  <name>caution.hot-wheel-end</name>
  <message>
   <source>A wheel end that smells, smokes or is too hot to come near: stop, do not touch it, keep a fire extinguisher at hand and let it cool.</source>
   <translation>Ein Rad, das riecht, raucht oder zu heiß ist, um in die Nähe zu kommen: anhalten, nicht anfassen, Feuerlöscher bereithalten und abkühlen lassen.</translation>
  </message>
 </context>
 <context>
  <name>caution.hub-nut</name>
  <message>
   <source>A hub nut that cannot be adjusted is renewed every time, is never turned back after reaching its torque, and never meets an impact wrench.</source>
   <translation>Eine nicht einstellbare Nabenmutter wird jedes Mal erneuert, nach Erreichen des Drehmoments nie zurückgedreht und nie mit dem Schlagschrauber angezogen.</translation>
  </message>
 </context>
 <context>
  <name>caution.lift-and-support</name>
  <message>
   <source>Never work on or under a car held by a jack alone: use lifting equipment in date for its inspection or stands rated for the load, on hard level ground, at the maker's lifting points, wheels chocked. Air suspension must be blocked or let down.</source>
   <translation>Niemals an oder unter einem Fahrzeug arbeiten, das nur ein Wagenheber hält: Hebebühne mit gültiger Prüfung oder Unterstellböcke mit ausreichender Traglast verwenden, auf hartem, ebenem Boden, an den Hebepunkten des Herstellers, Räder verkeilt. Luftfederung sperren oder ablassen.</translation>
  </message>
 </context>
 <context>
  <name>caution.magnets</name>
  <message>
   <source>Keep strong magnets, among them magnetic stands, at least 15 cm away from people with implanted heart devices, and away from the encoder: they can erase its poles.</source>
   <translation>Starke Magnete, auch Magnetstative, mindestens 15 cm von Menschen mit Herzimplantaten fernhalten und auch vom Encoderring: sie können seine Pole löschen.</translation>
  </message>
 </context>
 <context>
  <name>caution.makers-data</name>
  <message>
   <source>This ranking is a help for someone qualified to work on brakes and wheels. The maker's data and procedure, local rules and inspection law come first.</source>
   <translation>Diese Rangfolge hilft Menschen, die für Arbeiten an Bremsen und Rädern ausgebildet sind. Angaben und Vorschriften des Herstellers, örtliche Regeln und Prüfvorschriften gehen vor.</translation>
  </message>
 </context>
 <context>
  <name>caution.makers-torque</name>
  <message>
   <source>There is no general tightening torque: use the maker's figure and procedure for this car; some are only valid with the wheels on the ground.</source>
   <translation>Es gibt kein allgemeines Anzugsdrehmoment: Wert und Vorgehen des Herstellers für dieses Fahrzeug verwenden; manche gelten nur mit den Rädern am Boden.</translation>
  </message>
 </context>
 <context>
  <name>caution.no-compressed-air</name>
  <message>
   <source>Do not blow bearing, brake or encoder with compressed air, and never spin a dry bearing.</source>
   <translation>Lager, Bremse oder Encoderring nicht mit Druckluft ausblasen und ein trockenes Lager niemals hochdrehen.</translation>
  </message>
 </context>
 <context>
  <name>caution.re-tighten</name>
  <message>
   <source>After a wheel was off, tighten it by the maker's figure and check it again after the distance the maker names.</source>
   <translation>Nach dem Abnehmen eines Rades mit dem Wert des Herstellers anziehen und nach der Strecke, die der Hersteller nennt, nachprüfen.</translation>
  </message>
 </context>
 <context>
  <name>caution.sensor-electrics</name>
  <message>
   <source>Measure with a high-impedance meter and the maker's pin plan; never test a sensor with a lamp or feed a sensor input from outside. Keep away from orange high-voltage leads.</source>
   <translation>Mit hochohmigem Messgerät und dem Pinplan des Herstellers messen; nie einen Sensor mit einer Prüflampe testen und nie einen Sensoreingang von außen speisen. Abstand von orangefarbenen Hochvoltleitungen halten.</translation>
  </message>
 </context>
 <context>
  <name>caution.test-drive-legal</name>
  <message>
   <source>Drive only where it is allowed and safe, with a brake system that is fit for the road; with a warning lamp on, expect the brake control not to help.</source>
   <translation>Nur fahren, wo es erlaubt und sicher ist, mit einer verkehrssicheren Bremsanlage; bei leuchtender Warnlampe ist mit der Hilfe der Bremsregelung nicht zu rechnen.</translation>
  </message>
 </context>
 <context>
  <name>caution.turning-wheel</name>
  <message>
   <source>Keep hands, hair, clothes and leads clear of a turning wheel. With one wheel held, the differential turns the other one twice as fast.</source>
   <translation>Hände, Haare, Kleidung und Leitungen vom drehenden Rad fernhalten. Wird ein Rad festgehalten, dreht das Differential das andere doppelt so schnell.</translation>
  </message>
 </context>
 <context>
  <name>check.clean-and-drive-again</name>
  <message>
   <source>Clean encoder and sensor tip through the bore, refit, and record the same drive again. Is the disturbance gone?</source>
   <translation>Encoderring und Sensorspitze durch die Bohrung reinigen, wieder einbauen und dieselbe Fahrt noch einmal aufzeichnen. Ist die Störung weg?</translation>
  </message>
  <message>
   <source>Clean the encoder and drive again</source>
   <translation>Encoderring reinigen und noch einmal fahren</translation>
  </message>
  <message>
   <source>cleaner the maker allows</source>
   <translation>vom Hersteller zugelassener Reiniger</translation>
  </message>
  <message>
   <source>gone</source>
   <translation>weg</translation>
  </message>
  <message>
   <source>lint-free cloth</source>
   <translation>fusselfreies Tuch</translation>
  </message>
  <message>
   <source>still there</source>
   <translation>noch da</translation>
  </message>
  <message>
   <source>technician</source>
   <translation>Fachkraft</translation>
  </message>
  <message>
   <source>what came off, and the recording after it</source>
   <translation>was herunterkam, und die Aufzeichnung danach</translation>
  </message>
 </context>
 <context>
  <name>check.coil-resistance</name>
  <message>
   <source>Measure the coil</source>
   <translation>Spule messen</translation>
  </message>
  <message>
   <source>Passive sensor: connector open, which resistance has the coil? Hold it against the maker's figure; published ones lie at 1.3 to 1.7 kilohm.</source>
   <translation>Passiver Sensor: Stecker offen, welchen Widerstand hat die Spule? Mit dem Wert des Herstellers vergleichen; veröffentlichte liegen bei 1.3 bis 1.7 Kiloohm.</translation>
  </message>
  <message>
   <source>in the usual range</source>
   <translation>im üblichen Bereich</translation>
  </message>
  <message>
   <source>meter</source>
   <translation>Messgerät</translation>
  </message>
  <message>
   <source>much too low</source>
   <translation>viel zu niedrig</translation>
  </message>
  <message>
   <source>open</source>
   <translation>unterbrochen</translation>
  </message>
  <message>
   <source>resistance, temperature of the wheel end, the maker's figure</source>
   <translation>Widerstand, Temperatur am Rad, Wert des Herstellers</translation>
  </message>
  <message>
   <source>too high</source>
   <translation>zu hoch</translation>
  </message>
  <message>
   <source>trained in vehicle electrics</source>
   <translation>in Fahrzeugelektrik ausgebildet</translation>
  </message>
 </context>
 <context>
  <name>check.coil-voltage</name>
  <message>
   <source>Measure the coil's voltage</source>
   <translation>Spannung der Spule messen</translation>
  </message>
  <message>
   <source>Passive sensor: connector open, wheel turned by hand once a second: which alternating voltage?</source>
   <translation>Passiver Sensor: Stecker offen, Rad von Hand einmal je Sekunde gedreht: welche Wechselspannung?</translation>
  </message>
  <message>
   <source>a quarter of a volt or more</source>
   <translation>ein Viertelvolt oder mehr</translation>
  </message>
  <message>
   <source>meter for alternating voltage</source>
   <translation>Messgerät für Wechselspannung</translation>
  </message>
  <message>
   <source>none</source>
   <translation>keine</translation>
  </message>
  <message>
   <source>trained in vehicle electrics</source>
   <translation>in Fahrzeugelektrik ausgebildet</translation>
  </message>
  <message>
   <source>voltage, turns a second, both sides of the axle</source>
   <translation>Spannung, Umdrehungen je Sekunde, beide Seiten der Achse</translation>
  </message>
  <message>
   <source>weak</source>
   <translation>schwach</translation>
  </message>
 </context>
 <context>
  <name>check.compare-tyres</name>
  <message>
   <source>Compare the tyres</source>
   <translation>Reifen vergleichen</translation>
  </message>
  <message>
   <source>Size, tread depth and cold pressure of this wheel against the other one of the axle: are they the same?</source>
   <translation>Größe, Profiltiefe und Kaltdruck dieses Rades gegen das andere der Achse: sind sie gleich?</translation>
  </message>
  <message>
   <source>anyone</source>
   <translation>jeder</translation>
  </message>
  <message>
   <source>different</source>
   <translation>verschieden</translation>
  </message>
  <message>
   <source>pressure gauge</source>
   <translation>Reifendruckmesser</translation>
  </message>
  <message>
   <source>same size, tread and pressure</source>
   <translation>gleiche Größe, gleiches Profil, gleicher Druck</translation>
  </message>
  <message>
   <source>size, tread depth and cold pressure of all four</source>
   <translation>Größe, Profiltiefe und Kaltdruck aller vier</translation>
  </message>
  <message>
   <source>tread gauge</source>
   <translation>Profiltiefenmesser</translation>
  </message>
 </context>
 <context>
  <name>check.complaint-in-curves</name>
  <message>
   <source>Ask about curves</source>
   <translation>Verhalten in Kurven erfragen</translation>
  </message>
  <message>
   <source>Ask the driver: does the complaint change in long left and right curves?</source>
   <translation>Den Fahrer fragen: ändert sich die Beanstandung in langen Links- und Rechtskurven?</translation>
  </message>
  <message>
   <source>anyone who can ask</source>
   <translation>jeder, der fragen kann</translation>
  </message>
  <message>
   <source>no, or nobody can tell</source>
   <translation>nein, oder niemand weiß es</translation>
  </message>
  <message>
   <source>which curve, how fast, in the driver's words</source>
   <translation>welche Kurve, wie schnell, in den Worten des Fahrers</translation>
  </message>
  <message>
   <source>worse in left curves</source>
   <translation>schlimmer in Linkskurven</translation>
  </message>
  <message>
   <source>worse in right curves</source>
   <translation>schlimmer in Rechtskurven</translation>
  </message>
 </context>
 <context>
  <name>check.complaint-under-load</name>
  <message>
   <source>Ask about load</source>
   <translation>Einfluss der Beladung erfragen</translation>
  </message>
  <message>
   <source>Ask the driver: is it worse with passengers, luggage or a trailer?</source>
   <translation>Den Fahrer fragen: ist es mit Mitfahrern, Gepäck oder Anhänger schlimmer?</translation>
  </message>
  <message>
   <source>anyone who can ask</source>
   <translation>jeder, der fragen kann</translation>
  </message>
  <message>
   <source>better when loaded</source>
   <translation>beladen besser</translation>
  </message>
  <message>
   <source>load and where it sat</source>
   <translation>Beladung und wo sie saß</translation>
  </message>
  <message>
   <source>no, or nobody can tell</source>
   <translation>nein, oder niemand weiß es</translation>
  </message>
  <message>
   <source>worse when loaded</source>
   <translation>beladen schlimmer</translation>
  </message>
 </context>
 <context>
  <name>check.connector</name>
  <message>
   <source>Open the connector</source>
   <translation>Stecker öffnen</translation>
  </message>
  <message>
   <source>Open the sensor's connector. Are pins and seals clean, dry and straight?</source>
   <translation>Den Stecker des Sensors öffnen. Sind Kontakte und Dichtungen sauber, trocken und gerade?</translation>
  </message>
  <message>
   <source>a photograph of pins and seals</source>
   <translation>ein Foto von Kontakten und Dichtungen</translation>
  </message>
  <message>
   <source>clean, dry and straight</source>
   <translation>sauber, trocken und gerade</translation>
  </message>
  <message>
   <source>corroded, wet or bent</source>
   <translation>korrodiert, nass oder verbogen</translation>
  </message>
  <message>
   <source>lamp</source>
   <translation>Lampe</translation>
  </message>
  <message>
   <source>technician</source>
   <translation>Fachkraft</translation>
  </message>
 </context>
 <context>
  <name>check.count-poles</name>
  <message>
   <source>Count the pulses of one turn</source>
   <translation>Impulse einer Umdrehung zählen</translation>
  </message>
  <message>
   <source>Turn the wheel exactly ten times and count the pulses, or count poles with a magnetic viewing film. Is it the number the part list gives?</source>
   <translation>Das Rad genau zehnmal drehen und die Impulse zählen, oder die Pole mit einer Magnetfolie zählen. Ist es die Zahl aus der Teileliste?</translation>
  </message>
  <message>
   <source>another number</source>
   <translation>eine andere Zahl</translation>
  </message>
  <message>
   <source>as the part list says</source>
   <translation>wie in der Teileliste</translation>
  </message>
  <message>
   <source>pulse counter or viewing film</source>
   <translation>Impulszähler oder Magnetfolie</translation>
  </message>
  <message>
   <source>technician</source>
   <translation>Fachkraft</translation>
  </message>
  <message>
   <source>the count, and the number in the part list</source>
   <translation>die Zählung und die Zahl der Teileliste</translation>
  </message>
  <message>
   <source>the part list</source>
   <translation>die Teileliste</translation>
  </message>
 </context>
 <context>
  <name>check.encoder-film</name>
  <message>
   <source>Lay magnetic viewing film on the encoder's face where it can be reached and turn it once. How do the poles look?</source>
   <translation>Eine Magnetfolie auf die Fläche des Encoderrings legen, wo sie zugänglich ist, und einmal drehen. Wie sehen die Pole aus?</translation>
  </message>
  <message>
   <source>Show the poles with viewing film</source>
   <translation>Pole mit Magnetfolie sichtbar machen</translation>
  </message>
  <message>
   <source>a photograph, with the wheel's valve as mark</source>
   <translation>ein Foto, mit dem Reifenventil als Marke</translation>
  </message>
  <message>
   <source>a pole missing, or a crack</source>
   <translation>ein Pol fehlt, oder ein Riss</translation>
  </message>
  <message>
   <source>even all round</source>
   <translation>ringsum gleichmäßig</translation>
  </message>
  <message>
   <source>lamp</source>
   <translation>Lampe</translation>
  </message>
  <message>
   <source>magnetic viewing film</source>
   <translation>Magnetfolie</translation>
  </message>
  <message>
   <source>technician</source>
   <translation>Fachkraft</translation>
  </message>
  <message>
   <source>weak or blurred over a stretch</source>
   <translation>auf einem Stück schwach oder verwaschen</translation>
  </message>
 </context>
 <context>
  <name>check.end-play-gauge</name>
  <message>
   <source>Measure the bearing's axial play with a dial gauge, pushing and pulling while turning the wheel to and fro. Is it within the maker's limit?</source>
   <translation>Das Axialspiel des Lagers mit der Messuhr messen, unter Drücken und Ziehen, das Rad dabei hin und her drehen. Liegt es im Grenzwert des Herstellers?</translation>
  </message>
  <message>
   <source>Measure the end play</source>
   <translation>Axialspiel messen</translation>
  </message>
  <message>
   <source>beyond the maker's limit</source>
   <translation>über dem Grenzwert des Herstellers</translation>
  </message>
  <message>
   <source>dial gauge with stand</source>
   <translation>Messuhr mit Stativ</translation>
  </message>
  <message>
   <source>reading, the maker's limit, where the gauge stood</source>
   <translation>Messwert, Grenzwert des Herstellers, Ort der Messuhr</translation>
  </message>
  <message>
   <source>technician</source>
   <translation>Fachkraft</translation>
  </message>
  <message>
   <source>the maker's limit</source>
   <translation>der Grenzwert des Herstellers</translation>
  </message>
  <message>
   <source>within the maker's limit</source>
   <translation>innerhalb des Grenzwerts des Herstellers</translation>
  </message>
 </context>
 <context>
  <name>check.exchange-sensors</name>
  <message>
   <source>Exchange the sensors of the axle, where they are the same part, and drive again. Where is the fault now?</source>
   <translation>Die Sensoren der Achse tauschen, wenn es dasselbe Teil ist, und noch einmal fahren. Wo ist der Fehler jetzt?</translation>
  </message>
  <message>
   <source>Exchange the two sensors of the axle</source>
   <translation>Die beiden Sensoren der Achse tauschen</translation>
  </message>
  <message>
   <source>lift or stands</source>
   <translation>Hebebühne oder Unterstellböcke</translation>
  </message>
  <message>
   <source>not seen again on either side</source>
   <translation>auf keiner Seite wieder zu sehen</translation>
  </message>
  <message>
   <source>stayed at this corner</source>
   <translation>an dieser Radecke geblieben</translation>
  </message>
  <message>
   <source>technician</source>
   <translation>Fachkraft</translation>
  </message>
  <message>
   <source>went with the sensor to the other side</source>
   <translation>mit dem Sensor auf die andere Seite gewandert</translation>
  </message>
  <message>
   <source>which sensor went where, and the recording after it</source>
   <translation>welcher Sensor wohin kam, und die Aufzeichnung danach</translation>
  </message>
 </context>
 <context>
  <name>check.false-action</name>
  <message>
   <source>Ask about false brake-control action</source>
   <translation>Falsche Eingriffe der Bremsregelung erfragen</translation>
  </message>
  <message>
   <source>Ask the driver: does the brake control act by itself, with a buzz or a pulsing pedal, on a dry road without hard braking?</source>
   <translation>Den Fahrer fragen: greift die Bremsregelung von selbst ein, mit Rattern oder pulsierendem Pedal, auf trockener Straße ohne starkes Bremsen?</translation>
  </message>
  <message>
   <source>anyone who can ask</source>
   <translation>jeder, der fragen kann</translation>
  </message>
  <message>
   <source>at higher speed</source>
   <translation>bei höherer Geschwindigkeit</translation>
  </message>
  <message>
   <source>at walking pace, in the last metres before a stop</source>
   <translation>im Schritttempo, auf den letzten Metern vor dem Halt</translation>
  </message>
  <message>
   <source>never</source>
   <translation>nie</translation>
  </message>
  <message>
   <source>speed, pedal, road surface, how often</source>
   <translation>Geschwindigkeit, Pedal, Straßenbelag, wie oft</translation>
  </message>
 </context>
 <context>
  <name>check.growl-in-curves</name>
  <message>
   <source>A passenger listens in steady left and right curves. Does a growl change with the curve?</source>
   <translation>Ein Mitfahrer horcht in gleichmäßigen Links- und Rechtskurven. Ändert sich ein Brummen mit der Kurve?</translation>
  </message>
  <message>
   <source>Listen in curves</source>
   <translation>In Kurven horchen</translation>
  </message>
  <message>
   <source>a driver and a passenger</source>
   <translation>ein Fahrer und ein Mitfahrer</translation>
  </message>
  <message>
   <source>curve, speed, louder on which side</source>
   <translation>Kurve, Geschwindigkeit, auf welcher Seite lauter</translation>
  </message>
  <message>
   <source>growl louder in left curves</source>
   <translation>Brummen in Linkskurven lauter</translation>
  </message>
  <message>
   <source>growl louder in right curves</source>
   <translation>Brummen in Rechtskurven lauter</translation>
  </message>
  <message>
   <source>growl that does not change</source>
   <translation>Brummen, das sich nicht ändert</translation>
  </message>
  <message>
   <source>no growl</source>
   <translation>kein Brummen</translation>
  </message>
 </context>
 <context>
  <name>check.hub-temperature</name>
  <message>
   <source>After a drive with little braking: by how much is this hub warmer than the other one of the axle? Measure without touching.</source>
   <translation>Nach einer Fahrt mit wenig Bremsen: um wie viel ist diese Nabe wärmer als die andere der Achse? Berührungslos messen.</translation>
  </message>
  <message>
   <source>Compare the hubs' temperature</source>
   <translation>Temperatur der Naben vergleichen</translation>
  </message>
  <message>
   <source>anyone</source>
   <translation>jeder</translation>
  </message>
  <message>
   <source>both temperatures, outside temperature, the drive before</source>
   <translation>beide Temperaturen, Außentemperatur, die Fahrt davor</translation>
  </message>
  <message>
   <source>clearly warmer</source>
   <translation>deutlich wärmer</translation>
  </message>
  <message>
   <source>hot</source>
   <translation>heiß</translation>
  </message>
  <message>
   <source>infrared thermometer</source>
   <translation>Infrarot-Thermometer</translation>
  </message>
  <message>
   <source>within a few kelvin</source>
   <translation>innerhalb weniger Kelvin</translation>
  </message>
 </context>
 <context>
  <name>check.lamp-when</name>
  <message>
   <source>Ask the driver, once parked: when does the brake-control lamp come on?</source>
   <translation>Den Fahrer im Stand fragen: wann geht die Lampe der Bremsregelung an?</translation>
  </message>
  <message>
   <source>Ask when the lamp comes on</source>
   <translation>Zeitpunkt der Lampe erfragen</translation>
  </message>
  <message>
   <source>after a longer drive</source>
   <translation>nach längerer Fahrt</translation>
  </message>
  <message>
   <source>anyone who can ask</source>
   <translation>jeder, der fragen kann</translation>
  </message>
  <message>
   <source>at no particular moment</source>
   <translation>zu keinem bestimmten Zeitpunkt</translation>
  </message>
  <message>
   <source>at once, before the car moves</source>
   <translation>sofort, bevor das Fahrzeug rollt</translation>
  </message>
  <message>
   <source>in curves</source>
   <translation>in Kurven</translation>
  </message>
  <message>
   <source>in the first metres or below about 20 km/h</source>
   <translation>auf den ersten Metern oder unter etwa 20 km/h</translation>
  </message>
  <message>
   <source>never</source>
   <translation>nie</translation>
  </message>
  <message>
   <source>on bumps or at steering lock</source>
   <translation>auf Unebenheiten oder bei Lenkeinschlag</translation>
  </message>
  <message>
   <source>the driver's words</source>
   <translation>die Worte des Fahrers</translation>
  </message>
 </context>
 <context>
  <name>check.lamp-which</name>
  <message>
   <source>Ask the driver, once parked: which lamps come on?</source>
   <translation>Den Fahrer im Stand fragen: welche Lampen gehen an?</translation>
  </message>
  <message>
   <source>Ask which lamps come on</source>
   <translation>Leuchtende Lampen erfragen</translation>
  </message>
  <message>
   <source>anyone who can ask</source>
   <translation>jeder, der fragen kann</translation>
  </message>
  <message>
   <source>brake control or stability control</source>
   <translation>Bremsregelung oder Stabilitätsregelung</translation>
  </message>
  <message>
   <source>none</source>
   <translation>keine</translation>
  </message>
  <message>
   <source>the lamps, and whether they stay on after a new start</source>
   <translation>die Lampen, und ob sie nach einem Neustart anbleiben</translation>
  </message>
  <message>
   <source>the red brake lamp as well</source>
   <translation>auch die rote Bremslampe</translation>
  </message>
 </context>
 <context>
  <name>check.look-at-encoder</name>
  <message>
   <source>Look at the encoder through the sensor's bore</source>
   <translation>Encoderring durch die Sensorbohrung ansehen</translation>
  </message>
  <message>
   <source>Take the sensor out and look at the encoder through its bore with a lamp or endoscope, turning the wheel once. What is on it?</source>
   <translation>Den Sensor ausbauen und den Encoderring durch die Bohrung mit Lampe oder Endoskop ansehen, das Rad einmal drehen. Was ist darauf?</translation>
  </message>
  <message>
   <source>a photograph before cleaning, wheel angle against the valve</source>
   <translation>ein Foto vor dem Reinigen, Radwinkel gegen das Reifenventil</translation>
  </message>
  <message>
   <source>clean and whole</source>
   <translation>sauber und unversehrt</translation>
  </message>
  <message>
   <source>covered with dirt or metal dust</source>
   <translation>mit Schmutz oder Metallabrieb bedeckt</translation>
  </message>
  <message>
   <source>cracked, chipped or worn</source>
   <translation>gerissen, ausgebrochen oder abgenutzt</translation>
  </message>
  <message>
   <source>lamp or endoscope</source>
   <translation>Lampe oder Endoskop</translation>
  </message>
  <message>
   <source>technician</source>
   <translation>Fachkraft</translation>
  </message>
 </context>
 <context>
  <name>check.mileage</name>
  <message>
   <source>60 000 to 150 000 km</source>
   <translation>60 000 bis 150 000 km</translation>
  </message>
  <message>
   <source>Ask about the mileage</source>
   <translation>Laufleistung erfragen</translation>
  </message>
  <message>
   <source>What does the odometer show, and were hubs and sensors ever renewed?</source>
   <translation>Was zeigt der Kilometerzähler, und wurden Naben und Sensoren je erneuert?</translation>
  </message>
  <message>
   <source>above 150 000 km</source>
   <translation>über 150 000 km</translation>
  </message>
  <message>
   <source>anyone who can ask</source>
   <translation>jeder, der fragen kann</translation>
  </message>
  <message>
   <source>below 60 000 km, or renewed since</source>
   <translation>unter 60 000 km, oder seither erneuert</translation>
  </message>
  <message>
   <source>odometer, first registration</source>
   <translation>Kilometerstand, Erstzulassung</translation>
  </message>
 </context>
 <context>
  <name>check.noise-kind</name>
  <message>
   <source>Ask about noise</source>
   <translation>Geräusch erfragen</translation>
  </message>
  <message>
   <source>Ask the driver: which noise comes from the wheels?</source>
   <translation>Den Fahrer fragen: welches Geräusch kommt von den Rädern?</translation>
  </message>
  <message>
   <source>a growl or rumble that grows with speed</source>
   <translation>ein Brummen oder Rumpeln, das mit der Geschwindigkeit zunimmt</translation>
  </message>
  <message>
   <source>an even hum</source>
   <translation>ein gleichmäßiges Summen</translation>
  </message>
  <message>
   <source>anyone who can ask</source>
   <translation>jeder, der fragen kann</translation>
  </message>
  <message>
   <source>clicks or knocks</source>
   <translation>Klicken oder Klopfen</translation>
  </message>
  <message>
   <source>none</source>
   <translation>keines</translation>
  </message>
  <message>
   <source>the noise in the driver's words, speed and gear</source>
   <translation>das Geräusch in den Worten des Fahrers, Geschwindigkeit und Gang</translation>
  </message>
 </context>
 <context>
  <name>check.noise-speed</name>
  <message>
   <source>Ask at which speed the noise starts</source>
   <translation>Beginn des Geräuschs erfragen</translation>
  </message>
  <message>
   <source>Ask the driver: from which speed is the noise heard?</source>
   <translation>Den Fahrer fragen: ab welcher Geschwindigkeit ist das Geräusch zu hören?</translation>
  </message>
  <message>
   <source>above 80 km/h only</source>
   <translation>nur über 80 km/h</translation>
  </message>
  <message>
   <source>anyone who can ask</source>
   <translation>jeder, der fragen kann</translation>
  </message>
  <message>
   <source>below 30 km/h</source>
   <translation>unter 30 km/h</translation>
  </message>
  <message>
   <source>between 30 and 80 km/h</source>
   <translation>zwischen 30 und 80 km/h</translation>
  </message>
  <message>
   <source>speed at which it starts, and whether it changes when rolling in neutral</source>
   <translation>Geschwindigkeit, bei der es beginnt, und ob es sich beim Rollen im Leerlauf ändert</translation>
  </message>
  <message>
   <source>there is none</source>
   <translation>es gibt keines</translation>
  </message>
 </context>
 <context>
  <name>check.pedal-pulsation</name>
  <message>
   <source>Ask about the pedal</source>
   <translation>Bremspedal erfragen</translation>
  </message>
  <message>
   <source>Ask the driver: does the brake pedal pulse?</source>
   <translation>Den Fahrer fragen: pulsiert das Bremspedal?</translation>
  </message>
  <message>
   <source>anyone who can ask</source>
   <translation>jeder, der fragen kann</translation>
  </message>
  <message>
   <source>at every braking, faster with speed</source>
   <translation>bei jedem Bremsen, schneller mit der Geschwindigkeit</translation>
  </message>
  <message>
   <source>at which speeds, and whether in the wheel too</source>
   <translation>bei welchen Geschwindigkeiten, und ob auch im Lenkrad</translation>
  </message>
  <message>
   <source>no</source>
   <translation>nein</translation>
  </message>
  <message>
   <source>only in the last metres before a stop</source>
   <translation>nur auf den letzten Metern vor dem Halt</translation>
  </message>
 </context>
 <context>
  <name>check.read-fault-memory</name>
  <message>
   <source>Read the fault memory</source>
   <translation>Fehlerspeicher lesen</translation>
  </message>
  <message>
   <source>What does the memory of the brake control unit hold, and for which wheel? Let the maker's list say which wheel a code means.</source>
   <translation>Was steht im Fehlerspeicher des Bremsensteuergeräts, und für welches Rad? Welches Rad ein Code meint, sagt die Liste des Herstellers.</translation>
  </message>
  <message>
   <source>circuit open, short or out of range</source>
   <translation>Stromkreis unterbrochen, kurzgeschlossen oder außerhalb des Bereichs</translation>
  </message>
  <message>
   <source>every code with all its bytes, and the mileage stored with it</source>
   <translation>jeder Code mit allen Bytes und der dazu gespeicherte Kilometerstand</translation>
  </message>
  <message>
   <source>nothing stored</source>
   <translation>nichts gespeichert</translation>
  </message>
  <message>
   <source>scan tool</source>
   <translation>Diagnosegerät</translation>
  </message>
  <message>
   <source>signal missing, erratic or implausible</source>
   <translation>Signal fehlt, ist sprunghaft oder unplausibel</translation>
  </message>
  <message>
   <source>technician</source>
   <translation>Fachkraft</translation>
  </message>
  <message>
   <source>the maker's code list</source>
   <translation>die Codeliste des Herstellers</translation>
  </message>
  <message>
   <source>the same for several wheels at once</source>
   <translation>dasselbe für mehrere Räder zugleich</translation>
  </message>
 </context>
 <context>
  <name>check.recent-work</name>
  <message>
   <source>Ask about recent work</source>
   <translation>Kürzliche Arbeiten erfragen</translation>
  </message>
  <message>
   <source>Ask the driver: what was done to the wheels or brakes shortly before it began? Name the corner where it was one.</source>
   <translation>Den Fahrer fragen: was wurde kurz vor dem Beginn an Rädern oder Bremsen gemacht? Die Radecke nennen, wenn es eine einzelne war.</translation>
  </message>
  <message>
   <source>anyone who can ask</source>
   <translation>jeder, der fragen kann</translation>
  </message>
  <message>
   <source>brakes</source>
   <translation>Bremsen</translation>
  </message>
  <message>
   <source>drive shaft</source>
   <translation>Antriebswelle</translation>
  </message>
  <message>
   <source>hub or bearing</source>
   <translation>Nabe oder Lager</translation>
  </message>
  <message>
   <source>nothing</source>
   <translation>nichts</translation>
  </message>
  <message>
   <source>sensor or lead</source>
   <translation>Sensor oder Leitung</translation>
  </message>
  <message>
   <source>tyres or wheels</source>
   <translation>Reifen oder Räder</translation>
  </message>
  <message>
   <source>what, where, when, by whom, which parts</source>
   <translation>was, wo, wann, von wem, welche Teile</translation>
  </message>
 </context>
 <context>
  <name>check.resistance-to-ground</name>
  <message>
   <source>Both connectors of the lead open: which resistance has each wire against the body?</source>
   <translation>Beide Stecker der Leitung offen: welchen Widerstand hat jede Ader gegen die Karosserie?</translation>
  </message>
  <message>
   <source>Measure the lead against the body</source>
   <translation>Leitung gegen Karosserie messen</translation>
  </message>
  <message>
   <source>a path to the body</source>
   <translation>ein Weg zur Karosserie</translation>
  </message>
  <message>
   <source>meter</source>
   <translation>Messgerät</translation>
  </message>
  <message>
   <source>none that can be measured, or very high</source>
   <translation>keiner messbar, oder sehr hoch</translation>
  </message>
  <message>
   <source>resistance of each wire, wet or dry</source>
   <translation>Widerstand jeder Ader, nass oder trocken</translation>
  </message>
  <message>
   <source>trained in vehicle electrics</source>
   <translation>in Fahrzeugelektrik ausgebildet</translation>
  </message>
 </context>
 <context>
  <name>check.ring-runout</name>
  <message>
   <source>Watch the ring run</source>
   <translation>Dem Ring beim Drehen zusehen</translation>
  </message>
  <message>
   <source>With the sensor out, turn the raised wheel slowly once and watch the ring's face through the bore, or hold a dial gauge against the ring where it can be reached. Does it run true?</source>
   <translation>Bei ausgebautem Sensor das gehobene Rad langsam einmal drehen und die Fläche des Ringes durch die Bohrung beobachten, oder eine Messuhr an den Ring halten, wo er zugänglich ist. Läuft er rund?</translation>
  </message>
  <message>
   <source>dial gauge where there is room</source>
   <translation>Messuhr, wo Platz ist</translation>
  </message>
  <message>
   <source>how far it moves, and at which angle against the valve</source>
   <translation>wie weit er sich bewegt und bei welchem Winkel zum Reifenventil</translation>
  </message>
  <message>
   <source>lamp</source>
   <translation>Lampe</translation>
  </message>
  <message>
   <source>runs true</source>
   <translation>läuft rund</translation>
  </message>
  <message>
   <source>technician</source>
   <translation>Fachkraft</translation>
  </message>
  <message>
   <source>wobbles, or the gap comes and goes</source>
   <translation>taumelt, oder der Luftspalt kommt und geht</translation>
  </message>
 </context>
 <context>
  <name>check.road-surface</name>
  <message>
   <source>Ask about the road surface</source>
   <translation>Einfluss des Straßenbelags erfragen</translation>
  </message>
  <message>
   <source>Ask the driver: does the road surface make a difference?</source>
   <translation>Den Fahrer fragen: macht der Straßenbelag einen Unterschied?</translation>
  </message>
  <message>
   <source>anyone who can ask</source>
   <translation>jeder, der fragen kann</translation>
  </message>
  <message>
   <source>it comes on bumps and rough roads</source>
   <translation>es kommt auf Unebenheiten und schlechten Straßen</translation>
  </message>
  <message>
   <source>no</source>
   <translation>nein</translation>
  </message>
  <message>
   <source>road, speed, how often</source>
   <translation>Straße, Geschwindigkeit, wie oft</translation>
  </message>
  <message>
   <source>the noise changes from one surface to the next</source>
   <translation>das Geräusch wechselt mit dem Belag</translation>
  </message>
 </context>
 <context>
  <name>check.rock-wheel</name>
  <message>
   <source>Grip the raised wheel top and bottom, then left and right, and rock it while someone watches the hub. Is there play in the bearing?</source>
   <translation>Das gehobene Rad oben und unten, dann links und rechts fassen und rütteln, während jemand die Nabe beobachtet. Hat das Lager Spiel?</translation>
  </message>
  <message>
   <source>Rock the wheel</source>
   <translation>Am Rad rütteln</translation>
  </message>
  <message>
   <source>clear play felt</source>
   <translation>deutliches Spiel zu spüren</translation>
  </message>
  <message>
   <source>lift or stands</source>
   <translation>Hebebühne oder Unterstellböcke</translation>
  </message>
  <message>
   <source>no play felt</source>
   <translation>kein Spiel zu spüren</translation>
  </message>
  <message>
   <source>play in words, hour-hand position, whose hand</source>
   <translation>Spiel in Worten, Uhrzeigerstellung, wessen Hand</translation>
  </message>
  <message>
   <source>slight play felt</source>
   <translation>leichtes Spiel zu spüren</translation>
  </message>
  <message>
   <source>technician</source>
   <translation>Fachkraft</translation>
  </message>
 </context>
 <context>
  <name>check.rock-with-brake</name>
  <message>
   <source>Rock the raised wheel top and bottom, then left and right; where there is play, again while a second person presses the brake. What becomes of the play?</source>
   <translation>Am gehobenen Rad oben und unten, dann links und rechts rütteln; bei Spiel noch einmal, während eine zweite Person die Bremse tritt. Was wird aus dem Spiel?</translation>
  </message>
  <message>
   <source>Rock the wheel with the brake applied</source>
   <translation>Bei betätigter Bremse am Rad rütteln</translation>
  </message>
  <message>
   <source>a second person</source>
   <translation>eine zweite Person</translation>
  </message>
  <message>
   <source>hour-hand position, with and without brake</source>
   <translation>Uhrzeigerstellung, mit und ohne Bremse</translation>
  </message>
  <message>
   <source>lift or stands</source>
   <translation>Hebebühne oder Unterstellböcke</translation>
  </message>
  <message>
   <source>no play at all</source>
   <translation>gar kein Spiel</translation>
  </message>
  <message>
   <source>play left and right only</source>
   <translation>Spiel nur links und rechts</translation>
  </message>
  <message>
   <source>play that is gone with the brake applied</source>
   <translation>Spiel, das bei betätigter Bremse weg ist</translation>
  </message>
  <message>
   <source>play that stays with the brake applied</source>
   <translation>Spiel, das bei betätigter Bremse bleibt</translation>
  </message>
  <message>
   <source>technician</source>
   <translation>Fachkraft</translation>
  </message>
 </context>
 <context>
  <name>check.sensor-face</name>
  <message>
   <source>Look at the sensor's face</source>
   <translation>Fläche des Sensors ansehen</translation>
  </message>
  <message>
   <source>Take the sensor out. What is on its face?</source>
   <translation>Den Sensor ausbauen. Was ist auf seiner Fläche?</translation>
  </message>
  <message>
   <source>a beard of metal dust</source>
   <translation>ein Bart aus Metallabrieb</translation>
  </message>
  <message>
   <source>a photograph before wiping</source>
   <translation>ein Foto vor dem Abwischen</translation>
  </message>
  <message>
   <source>clean</source>
   <translation>sauber</translation>
  </message>
  <message>
   <source>lamp</source>
   <translation>Lampe</translation>
  </message>
  <message>
   <source>rubbed or hit</source>
   <translation>angestreift oder angeschlagen</translation>
  </message>
  <message>
   <source>technician</source>
   <translation>Fachkraft</translation>
  </message>
 </context>
 <context>
  <name>check.sensor-kind</name>
  <message>
   <source>Does the maker's data call the wheel speed sensors active (fed, two current levels), active with three levels, or passive (a coil)?</source>
   <translation>Nennen die Angaben des Herstellers die Raddrehzahlsensoren aktiv (gespeist, zwei Strompegel), aktiv mit drei Pegeln oder passiv (eine Spule)?</translation>
  </message>
  <message>
   <source>See which kind of sensor it is</source>
   <translation>Feststellen, welche Art Sensor es ist</translation>
  </message>
  <message>
   <source>active, three levels</source>
   <translation>aktiv, drei Pegel</translation>
  </message>
  <message>
   <source>active, two levels</source>
   <translation>aktiv, zwei Pegel</translation>
  </message>
  <message>
   <source>kind of sensor</source>
   <translation>Art des Sensors</translation>
  </message>
  <message>
   <source>passive, a coil</source>
   <translation>passiv, eine Spule</translation>
  </message>
  <message>
   <source>technician</source>
   <translation>Fachkraft</translation>
  </message>
  <message>
   <source>the maker's data</source>
   <translation>die Angaben des Herstellers</translation>
  </message>
 </context>
 <context>
  <name>check.sensor-seat</name>
  <message>
   <source>Check the sensor's seat</source>
   <translation>Sitz des Sensors prüfen</translation>
  </message>
  <message>
   <source>Is the sensor tight and flat in its seat, without rust under it?</source>
   <translation>Sitzt der Sensor fest und plan, ohne Rost darunter?</translation>
  </message>
  <message>
   <source>a photograph of the seat</source>
   <translation>ein Foto des Sitzes</translation>
  </message>
  <message>
   <source>lamp</source>
   <translation>Lampe</translation>
  </message>
  <message>
   <source>loose, or lifted by rust</source>
   <translation>lose, oder von Rost angehoben</translation>
  </message>
  <message>
   <source>technician</source>
   <translation>Fachkraft</translation>
  </message>
  <message>
   <source>tight and flat</source>
   <translation>fest und plan</translation>
  </message>
 </context>
 <context>
  <name>check.sensor-supply-current</name>
  <message>
   <source>Active sensor: with the wheel turned slowly by hand, does the current change between two levels one about twice the other (in open manuals 7 and 14 mA)? A value is the highest level seen.</source>
   <translation>Aktiver Sensor: wechselt der Strom, wenn das Rad langsam von Hand gedreht wird, zwischen zwei Pegeln, von denen einer etwa doppelt so hoch ist (in offenen Handbüchern 7 und 14 mA)? Als Wert gilt der höchste gesehene Pegel.</translation>
  </message>
  <message>
   <source>Measure the sensor's current</source>
   <translation>Strom des Sensors messen</translation>
  </message>
  <message>
   <source>both levels, the resistor, the meter</source>
   <translation>beide Pegel, der Widerstand, das Messgerät</translation>
  </message>
  <message>
   <source>meter for milliamperes or a shunt</source>
   <translation>Messgerät für Milliampere oder ein Messwiderstand</translation>
  </message>
  <message>
   <source>no current</source>
   <translation>kein Strom</translation>
  </message>
  <message>
   <source>stays at one level, or a wrong one</source>
   <translation>bleibt auf einem Pegel, oder auf einem falschen</translation>
  </message>
  <message>
   <source>the maker's values</source>
   <translation>die Werte des Herstellers</translation>
  </message>
  <message>
   <source>trained in vehicle electrics</source>
   <translation>in Fahrzeugelektrik ausgebildet</translation>
  </message>
  <message>
   <source>two levels, both right</source>
   <translation>zwei Pegel, beide richtig</translation>
  </message>
 </context>
 <context>
  <name>check.since-when</name>
  <message>
   <source>Ask how it began</source>
   <translation>Beginn erfragen</translation>
  </message>
  <message>
   <source>Ask the driver: how did it begin?</source>
   <translation>Den Fahrer fragen: wie begann es?</translation>
  </message>
  <message>
   <source>anyone who can ask</source>
   <translation>jeder, der fragen kann</translation>
  </message>
  <message>
   <source>date, mileage, what happened then</source>
   <translation>Datum, Kilometerstand, was damals geschah</translation>
  </message>
  <message>
   <source>from one moment to the next</source>
   <translation>von einem Augenblick auf den anderen</translation>
  </message>
  <message>
   <source>it comes and goes</source>
   <translation>es kommt und geht</translation>
  </message>
  <message>
   <source>it grew over weeks</source>
   <translation>es nahm über Wochen zu</translation>
  </message>
 </context>
 <context>
  <name>check.spin-and-watch</name>
  <message>
   <source>Turn this wheel and watch the channels</source>
   <translation>Dieses Rad drehen und die Kanäle beobachten</translation>
  </message>
  <message>
   <source>With the ignition on, turn this wheel alone by hand and watch the four channels. Which one answers?</source>
   <translation>Bei eingeschalteter Zündung nur dieses Rad von Hand drehen und die vier Kanäle beobachten. Welcher antwortet?</translation>
  </message>
  <message>
   <source>another wheel's channel</source>
   <translation>der Kanal eines anderen Rades</translation>
  </message>
  <message>
   <source>its own channel</source>
   <translation>sein eigener Kanal</translation>
  </message>
  <message>
   <source>live reading of the four wheels</source>
   <translation>laufende Anzeige der vier Räder</translation>
  </message>
  <message>
   <source>none</source>
   <translation>keiner</translation>
  </message>
  <message>
   <source>technician</source>
   <translation>Fachkraft</translation>
  </message>
  <message>
   <source>which channel answered</source>
   <translation>welcher Kanal antwortete</translation>
  </message>
 </context>
 <context>
  <name>check.stethoscope</name>
  <message>
   <source>Listen at the hub</source>
   <translation>An der Nabe horchen</translation>
  </message>
  <message>
   <source>Turn the raised wheel by hand and hold a stethoscope to the knuckle, then to the other side's. How does this corner sound?</source>
   <translation>Das gehobene Rad von Hand drehen und ein Stethoskop an den Achsschenkel halten, dann an den der anderen Seite. Wie klingt diese Radecke?</translation>
  </message>
  <message>
   <source>both sides, in words or as a recording</source>
   <translation>beide Seiten, in Worten oder als Tonaufnahme</translation>
  </message>
  <message>
   <source>like the other side</source>
   <translation>wie die andere Seite</translation>
  </message>
  <message>
   <source>rougher or louder than the other side</source>
   <translation>rauer oder lauter als die andere Seite</translation>
  </message>
  <message>
   <source>stethoscope</source>
   <translation>Stethoskop</translation>
  </message>
  <message>
   <source>technician</source>
   <translation>Fachkraft</translation>
  </message>
 </context>
 <context>
  <name>check.supply-voltage</name>
  <message>
   <source>Active sensor: connector open, ignition on: which voltage stands at the two pins of the body's side? Give the maker's figure as the limit.</source>
   <translation>Aktiver Sensor: Stecker offen, Zündung ein: welche Spannung steht an den beiden Kontakten der Karosserieseite? Den Wert des Herstellers als Grenzwert angeben.</translation>
  </message>
  <message>
   <source>Measure the sensor's supply</source>
   <translation>Versorgung des Sensors messen</translation>
  </message>
  <message>
   <source>as the maker says</source>
   <translation>wie vom Hersteller angegeben</translation>
  </message>
  <message>
   <source>high-impedance meter</source>
   <translation>hochohmiges Messgerät</translation>
  </message>
  <message>
   <source>lower than the maker's figure</source>
   <translation>niedriger als der Wert des Herstellers</translation>
  </message>
  <message>
   <source>none</source>
   <translation>keine</translation>
  </message>
  <message>
   <source>the maker's pin plan</source>
   <translation>der Pinplan des Herstellers</translation>
  </message>
  <message>
   <source>trained in vehicle electrics</source>
   <translation>in Fahrzeugelektrik ausgebildet</translation>
  </message>
  <message>
   <source>voltage, pins, ignition on or off, the maker's figure</source>
   <translation>Spannung, Kontakte, Zündung ein oder aus, Wert des Herstellers</translation>
  </message>
 </context>
 <context>
  <name>check.three-level-current</name>
  <message>
   <source>7 or 14 mA only, no speed pulse</source>
   <translation>nur 7 oder 14 mA, kein Drehzahlimpuls</translation>
  </message>
  <message>
   <source>Active sensor of the kind with three levels (7, 14 and 28 mA): with the wheel turned slowly by hand, which is the highest level?</source>
   <translation>Aktiver Sensor der Art mit drei Pegeln (7, 14 und 28 mA): welches ist der höchste Pegel, wenn das Rad langsam von Hand gedreht wird?</translation>
  </message>
  <message>
   <source>Measure a three-level sensor's pulses</source>
   <translation>Impulse eines Drei-Pegel-Sensors messen</translation>
  </message>
  <message>
   <source>more than that</source>
   <translation>mehr als das</translation>
  </message>
  <message>
   <source>no current</source>
   <translation>kein Strom</translation>
  </message>
  <message>
   <source>shunt and oscilloscope</source>
   <translation>Messwiderstand und Oszilloskop</translation>
  </message>
  <message>
   <source>speed pulses near 28 mA</source>
   <translation>Drehzahlimpulse nahe 28 mA</translation>
  </message>
  <message>
   <source>the level, the resistor, the meter</source>
   <translation>der Pegel, der Widerstand, das Messgerät</translation>
  </message>
  <message>
   <source>the maker's values</source>
   <translation>die Werte des Herstellers</translation>
  </message>
  <message>
   <source>trained in vehicle electrics</source>
   <translation>in Fahrzeugelektrik ausgebildet</translation>
  </message>
 </context>
 <context>
  <name>check.turn-by-hand</name>
  <message>
   <source>Turn the raised wheel by hand with a palm on the spring or knuckle. How does it turn?</source>
   <translation>Das gehobene Rad von Hand drehen, eine Handfläche an Feder oder Achsschenkel. Wie dreht es sich?</translation>
  </message>
  <message>
   <source>Turn the wheel by hand</source>
   <translation>Rad von Hand drehen</translation>
  </message>
  <message>
   <source>feels rough or grinds</source>
   <translation>fühlt sich rau an oder mahlt</translation>
  </message>
  <message>
   <source>how it turns, and the other side for comparison</source>
   <translation>wie es dreht, und die andere Seite zum Vergleich</translation>
  </message>
  <message>
   <source>lift or stands</source>
   <translation>Hebebühne oder Unterstellböcke</translation>
  </message>
  <message>
   <source>technician</source>
   <translation>Fachkraft</translation>
  </message>
  <message>
   <source>turns smoothly</source>
   <translation>dreht leicht</translation>
  </message>
  <message>
   <source>turns stiffly</source>
   <translation>dreht schwer</translation>
  </message>
 </context>
 <context>
  <name>check.weather</name>
  <message>
   <source>Ask about weather and temperature</source>
   <translation>Einfluss von Wetter und Temperatur erfragen</translation>
  </message>
  <message>
   <source>Ask the driver: does rain, washing, cold or heat make a difference?</source>
   <translation>Den Fahrer fragen: machen Regen, Wäsche, Kälte oder Hitze einen Unterschied?</translation>
  </message>
  <message>
   <source>after rain or washing</source>
   <translation>nach Regen oder Wäsche</translation>
  </message>
  <message>
   <source>anyone who can ask</source>
   <translation>jeder, der fragen kann</translation>
  </message>
  <message>
   <source>in the cold, gone when warm</source>
   <translation>bei Kälte, warm ist es weg</translation>
  </message>
  <message>
   <source>no</source>
   <translation>nein</translation>
  </message>
  <message>
   <source>only when warm</source>
   <translation>nur in warmem Zustand</translation>
  </message>
  <message>
   <source>weather, outside temperature, minutes after the start</source>
   <translation>Wetter, Außentemperatur, Minuten nach dem Start</translation>
  </message>
 </context>
 <context>
  <name>check.wiggle-lead</name>
  <message>
   <source>Move the lead</source>
   <translation>Leitung bewegen</translation>
  </message>
  <message>
   <source>With the signal or the sensor's current on a screen, bend the lead along its whole way and move the connector. What does the signal do?</source>
   <translation>Mit dem Signal oder dem Sensorstrom auf dem Bildschirm die Leitung auf ihrem ganzen Weg biegen und den Stecker bewegen. Was tut das Signal?</translation>
  </message>
  <message>
   <source>drops out</source>
   <translation>fällt aus</translation>
  </message>
  <message>
   <source>meter or live reading</source>
   <translation>Messgerät oder laufende Anzeige</translation>
  </message>
  <message>
   <source>steady</source>
   <translation>bleibt stehen</translation>
  </message>
  <message>
   <source>trained in vehicle electrics</source>
   <translation>in Fahrzeugelektrik ausgebildet</translation>
  </message>
  <message>
   <source>where it was bent when the signal dropped</source>
   <translation>wo gebogen wurde, als das Signal ausfiel</translation>
  </message>
 </context>
 <context>
  <name>complaints</name>
  <message>
   <source>All warning lamps flash for a moment, then everything works again.</source>
   <translation>Alle Warnlampen blinken kurz auf, danach geht alles wieder.</translation>
  </message>
  <message>
   <source>Brake-control lamp after the lane with the road works; the pedal once pulsed when rolling to a stop.</source>
   <translation>Lampe der Bremsregelung nach der Spur mit der Baustelle; einmal pulsierte das Pedal beim Ausrollen.</translation>
  </message>
  <message>
   <source>Driven on a wet morning with hard stops; the driver wants to be sure.</source>
   <translation>An einem nassen Morgen mit harten Bremsungen gefahren; der Fahrer will sichergehen.</translation>
  </message>
  <message>
   <source>Hums since spring, and the lamp comes on in the long right-hand bend.</source>
   <translation>Brummt seit dem Frühjahr, und in der langen Rechtskurve geht die Lampe an.</translation>
  </message>
  <message>
   <source>Lamp after a puncture; the spare is on at the rear right.</source>
   <translation>Lampe nach einer Reifenpanne; hinten rechts ist das Ersatzrad montiert.</translation>
  </message>
  <message>
   <source>Lamp comes on about once a week and is out again after a restart.</source>
   <translation>Die Lampe geht etwa einmal in der Woche an und ist nach einem Neustart wieder aus.</translation>
  </message>
  <message>
   <source>Lamp comes on when the van is warm.</source>
   <translation>Die Lampe geht an, wenn der Transporter warm ist.</translation>
  </message>
  <message>
   <source>Lamp flickers over kerbs and on the ramp of the yard.</source>
   <translation>Die Lampe flackert an Bordsteinen und auf der Rampe zum Hof.</translation>
  </message>
  <message>
   <source>Lamp on a few minutes after every start since the front left bearing was replaced.</source>
   <translation>Seit das Lager vorne links ersetzt wurde, geht die Lampe wenige Minuten nach jedem Start an.</translation>
  </message>
  <message>
   <source>Lamp on rough roads; the sensor seat was rusty when last seen.</source>
   <translation>Lampe auf schlechten Straßen; der Sensorsitz war beim letzten Mal rostig.</translation>
  </message>
  <message>
   <source>Lamp on since the driveshaft was changed.</source>
   <translation>Die Lampe leuchtet, seit die Antriebswelle gewechselt wurde.</translation>
  </message>
  <message>
   <source>New hub bearing pressed in last month; lamp comes on at speed.</source>
   <translation>Letzten Monat neues Nabenlager eingepresst; bei Tempo geht die Lampe an.</translation>
  </message>
  <message>
   <source>Nothing to report, measured as the fleet's yardstick.</source>
   <translation>Nichts zu beanstanden, als Maßstab der Flotte gemessen.</translation>
  </message>
  <message>
   <source>The oldest van: the brakes rattle just before it stops.</source>
   <translation>Der älteste Transporter: die Bremsen rattern kurz vor dem Stillstand.</translation>
  </message>
 </context>
 <context>
  <name>measurement.angle-share</name>
  <message>
   <source>Of the quick ripple of the {corner} wheel, {value} comes back at the same place of every turn ({band}).</source>
   <translation>Von der schnellen Welligkeit am Rad {corner} kommen {value} in jeder Umdrehung an derselben Stelle wieder ({band}).</translation>
  </message>
  <message>
   <source>Ripple that repeats with the wheel's angle</source>
   <translation>Welligkeit, die sich mit dem Radwinkel wiederholt</translation>
  </message>
  <message>
   <source>Steady straight driving of 200 wheel turns or more.</source>
   <translation>Gleichmäßige Geradeausfahrt über 200 Radumdrehungen oder mehr.</translation>
  </message>
  <message>
   <source>little</source>
   <translation>wenig</translation>
  </message>
  <message>
   <source>most</source>
   <translation>das meiste</translation>
  </message>
  <message>
   <source>much</source>
   <translation>viel</translation>
  </message>
  <message>
   <source>nearly all</source>
   <translation>fast alles</translation>
  </message>
  <message>
   <source>some</source>
   <translation>etwas</translation>
  </message>
  <message>
   <source>two steady straight kilometres at 30 to 80 km/h on smooth road, recorded 20 times a second or more</source>
   <translation>zwei gleichmäßige gerade Kilometer mit 30 bis 80 km/h auf glatter Straße, 20-mal je Sekunde oder öfter aufgezeichnet</translation>
  </message>
 </context>
 <context>
  <name>measurement.bad-pole-run</name>
  <message>
   <source>Bad poles in a row</source>
   <translation>Schadhafte Pole hintereinander</translation>
  </message>
  <message>
   <source>The longest row of bad poles on the {corner} wheel's ring spans {value} of 360° ({band}).</source>
   <translation>Die längste Reihe schadhafter Pole am Ring des Rades {corner} umspannt {value} von 360° ({band}).</translation>
  </message>
  <message>
   <source>The times of single edges (edge_times), a quarter of a minute or more of steady driving.</source>
   <translation>Die Zeiten einzelner Flanken (edge_times), eine Viertelminute oder mehr gleichmäßige Fahrt.</translation>
  </message>
  <message>
   <source>a few poles</source>
   <translation>einige Pole</translation>
  </message>
  <message>
   <source>a sector</source>
   <translation>ein Sektor</translation>
  </message>
  <message>
   <source>a wide sector</source>
   <translation>ein breiter Sektor</translation>
  </message>
  <message>
   <source>none</source>
   <translation>keine</translation>
  </message>
  <message>
   <source>one minute of steady driving at 30 to 80 km/h</source>
   <translation>eine Minute gleichmäßige Fahrt mit 30 bis 80 km/h</translation>
  </message>
 </context>
 <context>
  <name>measurement.bad-sector-count</name>
  <message>
   <source>Number of bad sectors</source>
   <translation>Zahl der schadhaften Sektoren</translation>
  </message>
  <message>
   <source>On the ring of the {corner} wheel, {value} separate places make the speed drop ({band}).</source>
   <translation>Am Ring des Rades {corner} lassen {value} getrennte Stellen die Geschwindigkeit einbrechen ({band}).</translation>
  </message>
  <message>
   <source>Steady straight driving of 200 wheel turns or more while the fault is present, recorded at 50 Hz or faster.</source>
   <translation>Gleichmäßige Geradeausfahrt über 200 Radumdrehungen oder mehr, während der Fehler da ist, aufgezeichnet mit 50 Hz oder schneller.</translation>
  </message>
  <message>
   <source>one</source>
   <translation>eine</translation>
  </message>
  <message>
   <source>three or more</source>
   <translation>drei oder mehr</translation>
  </message>
  <message>
   <source>two</source>
   <translation>zwei</translation>
  </message>
  <message>
   <source>two minutes of steady straight driving at 25 to 40 km/h</source>
   <translation>zwei Minuten gleichmäßige Geradeausfahrt mit 25 bis 40 km/h</translation>
  </message>
 </context>
 <context>
  <name>measurement.bad-sector-width</name>
  <message>
   <source>Steady straight driving of 200 wheel turns or more, with a pattern in it.</source>
   <translation>Gleichmäßige Geradeausfahrt über 200 Radumdrehungen oder mehr, mit einem Muster darin.</translation>
  </message>
  <message>
   <source>The bad part of the {corner} wheel's turn is {value} of 360° wide ({band}).</source>
   <translation>Der schadhafte Teil der Umdrehung am Rad {corner} ist {value} von 360° breit ({band}).</translation>
  </message>
  <message>
   <source>Width of the bad sector</source>
   <translation>Breite des schadhaften Sektors</translation>
  </message>
  <message>
   <source>a steady straight kilometre or more at 30 to 80 km/h while the {corner} wheel shows its fault, recorded 50 times a second or more</source>
   <translation>ein gleichmäßiger gerader Kilometer oder mehr mit 30 bis 80 km/h, während das Rad {corner} seinen Fehler zeigt, 50-mal je Sekunde oder öfter aufgezeichnet</translation>
  </message>
  <message>
   <source>medium</source>
   <translation>mittel</translation>
  </message>
  <message>
   <source>narrow</source>
   <translation>schmal</translation>
  </message>
  <message>
   <source>rather narrow</source>
   <translation>eher schmal</translation>
  </message>
  <message>
   <source>very narrow</source>
   <translation>sehr schmal</translation>
  </message>
  <message>
   <source>very wide</source>
   <translation>sehr breit</translation>
  </message>
  <message>
   <source>wide</source>
   <translation>breit</translation>
  </message>
 </context>
 <context>
  <name>measurement.brake-coupling</name>
  <message>
   <source>Braking from several speeds, with five losses or more.</source>
   <translation>Bremsungen aus mehreren Geschwindigkeiten, mit fünf Ausfällen oder mehr.</translation>
  </message>
  <message>
   <source>Losses while braking</source>
   <translation>Ausfälle beim Bremsen</translation>
  </message>
  <message>
   <source>While braking the {corner} wheel loses its signal {value} as often as when rolling at the same speed ({band}).</source>
   <translation>Beim Bremsen verliert das Rad {corner} sein Signal {value} so oft wie beim Rollen mit derselben Geschwindigkeit ({band}).</translation>
  </message>
  <message>
   <source>more while braking</source>
   <translation>mehr beim Bremsen</translation>
  </message>
  <message>
   <source>no difference</source>
   <translation>kein Unterschied</translation>
  </message>
  <message>
   <source>rather when rolling</source>
   <translation>eher beim Rollen</translation>
  </message>
  <message>
   <source>ten gentle stops from 50 km/h</source>
   <translation>zehn sanfte Halte aus 50 km/h</translation>
  </message>
 </context>
 <context>
  <name>measurement.bump-coupling</name>
  <message>
   <source>A drive over bumps and even road, with five losses or more.</source>
   <translation>Eine Fahrt über Unebenheiten und ebene Straße, mit fünf Ausfällen oder mehr.</translation>
  </message>
  <message>
   <source>Just after bumps the {corner} wheel loses its signal {value} as often as elsewhere ({band}).</source>
   <translation>Gleich nach Unebenheiten verliert das Rad {corner} sein Signal {value} so oft wie sonst ({band}).</translation>
  </message>
  <message>
   <source>Losses at bumps</source>
   <translation>Ausfälle an Unebenheiten</translation>
  </message>
  <message>
   <source>more at bumps</source>
   <translation>mehr an Unebenheiten</translation>
  </message>
  <message>
   <source>mostly at bumps</source>
   <translation>meist an Unebenheiten</translation>
  </message>
  <message>
   <source>no difference</source>
   <translation>kein Unterschied</translation>
  </message>
  <message>
   <source>rather elsewhere</source>
   <translation>eher anderswo</translation>
  </message>
  <message>
   <source>two passes over a stretch of bumpy road and two over an even one, at the same speed</source>
   <translation>zweimal über ein unebenes Stück Straße und zweimal über ein ebenes, mit derselben Geschwindigkeit</translation>
  </message>
 </context>
 <context>
  <name>measurement.cage-line</name>
  <message>
   <source>Brisk curves to both sides, five or more of each.</source>
   <translation>Zügige Kurven nach beiden Seiten, je fünf oder mehr.</translation>
  </message>
  <message>
   <source>Line of the bearing cage under side load</source>
   <translation>Linie des Lagerkäfigs unter Seitenkraft</translation>
  </message>
  <message>
   <source>The swing of the {corner} wheel in time with a bearing's cage differs between {loaded_curve} curves, which load it, and {other_curve} ones by {value} of the speed ({band}).</source>
   <translation>Die Schwankung am Rad {corner} im Takt eines Lagerkäfigs unterscheidet sich zwischen {loaded_curve}kurven, die es belasten, und {other_curve}kurven um {value} der Geschwindigkeit ({band}).</translation>
  </message>
  <message>
   <source>five steady {loaded_curve} curves at 40 to 60 km/h, as brisk as the road and the law allow, so that the {corner} wheel is loaded as the outer wheel, and five {other_curve} ones to compare with</source>
   <translation>fünf gleichmäßig gefahrene {loaded_curve}kurven mit 40 bis 60 km/h, so zügig, wie Straße und Vorschrift erlauben, damit das Rad {corner} als äußeres Rad belastet ist, und fünf {other_curve}kurven zum Vergleich</translation>
  </message>
  <message>
   <source>more as inner wheel</source>
   <translation>mehr als inneres Rad</translation>
  </message>
  <message>
   <source>none</source>
   <translation>keine</translation>
  </message>
  <message>
   <source>raised</source>
   <translation>erhöht</translation>
  </message>
  <message>
   <source>strong</source>
   <translation>stark</translation>
  </message>
 </context>
 <context>
  <name>measurement.cut-off-speed</name>
  <message>
   <source>Lowest speed still read</source>
   <translation>Niedrigste noch gelesene Geschwindigkeit</translation>
  </message>
  <message>
   <source>The lowest speed at which the {corner} wheel still reads lies {value} above that of the others ({band}).</source>
   <translation>Die niedrigste Geschwindigkeit, die das Rad {corner} noch anzeigt, liegt um {value} über der der anderen ({band}).</translation>
  </message>
  <message>
   <source>Three or more slow stops and pull-aways.</source>
   <translation>Drei oder mehr langsame Halte mit Anfahren.</translation>
  </message>
  <message>
   <source>a little early</source>
   <translation>etwas zu früh</translation>
  </message>
  <message>
   <source>like the others</source>
   <translation>wie die anderen</translation>
  </message>
  <message>
   <source>much too early</source>
   <translation>viel zu früh</translation>
  </message>
  <message>
   <source>three slow stops and pull-aways on a yard or a quiet road, the {corner} wheel rolling at walking pace for some seconds each time</source>
   <translation>drei langsame Halte mit Anfahren auf einem Hof oder einer ruhigen Straße, das Rad {corner} dabei jedes Mal einige Sekunden im Schritttempo rollen lassen</translation>
  </message>
 </context>
 <context>
  <name>measurement.dead-share</name>
  <message>
   <source>Any driving above walking pace, one minute or more.</source>
   <translation>Beliebige Fahrt über Schritttempo, eine Minute oder mehr.</translation>
  </message>
  <message>
   <source>The {corner} wheel alone reads nothing for {value} of the time the car moves ({band}).</source>
   <translation>Allein das Rad {corner} zeigt während {value} der Zeit, in der das Fahrzeug rollt, nichts an ({band}).</translation>
  </message>
  <message>
   <source>The {corner} wheel is at no time alone in reading nothing.</source>
   <translation>Das Rad {corner} zeigt zu keiner Zeit als einziges nichts an.</translation>
  </message>
  <message>
   <source>Time without signal</source>
   <translation>Zeit ohne Signal</translation>
  </message>
  <message>
   <source>briefly</source>
   <translation>kurz</translation>
  </message>
  <message>
   <source>for long</source>
   <translation>lange</translation>
  </message>
  <message>
   <source>for seconds</source>
   <translation>sekundenlang</translation>
  </message>
  <message>
   <source>never</source>
   <translation>nie</translation>
  </message>
  <message>
   <source>two minutes or more above walking pace, such as the drive in which the complaint appears</source>
   <translation>zwei Minuten oder mehr über Schritttempo, etwa die Fahrt, in der die Beanstandung auftritt</translation>
  </message>
 </context>
 <context>
  <name>measurement.deepest-drop</name>
  <message>
   <source>At its worst moment the {corner} wheel alone reads {value} too slow, faster than a tyre can slow it ({band}).</source>
   <translation>Im schlimmsten Augenblick zeigt allein das Rad {corner} um {value} zu wenig, schneller, als ein Reifen es bremsen kann ({band}).</translation>
  </message>
  <message>
   <source>Deepest drop of this wheel alone</source>
   <translation>Tiefster Einbruch nur dieses Rades</translation>
  </message>
  <message>
   <source>No fall of the {corner} wheel alone was found that is faster than a tyre can slow it; one by 8 % of its speed that lasts three samples would have been seen.</source>
   <translation>Am Rad {corner} allein wurde kein Einbruch gefunden, der schneller ist, als ein Reifen es bremsen kann; einer um 8 % der Geschwindigkeit, der drei Messwerte dauert, wäre aufgefallen.</translation>
  </message>
  <message>
   <source>One minute or more of driving above 10 km/h, recorded at 20 Hz or faster.</source>
   <translation>Eine Minute Fahrt oder mehr über 10 km/h, aufgezeichnet mit 20 Hz oder schneller.</translation>
  </message>
  <message>
   <source>a large part</source>
   <translation>ein großer Teil</translation>
  </message>
  <message>
   <source>a part</source>
   <translation>ein Teil</translation>
  </message>
  <message>
   <source>a small part</source>
   <translation>ein kleiner Teil</translation>
  </message>
  <message>
   <source>most of it</source>
   <translation>fast ganz</translation>
  </message>
  <message>
   <source>no such fall</source>
   <translation>kein solcher Einbruch</translation>
  </message>
  <message>
   <source>three minutes or more above 10 km/h, recorded 20 times a second or more, such as the drive in which the complaint appears</source>
   <translation>drei Minuten oder mehr über 10 km/h, 20-mal je Sekunde oder öfter aufgezeichnet, etwa die Fahrt, in der die Beanstandung auftritt</translation>
  </message>
  <message>
   <source>to nothing</source>
   <translation>bis auf nichts</translation>
  </message>
 </context>
 <context>
  <name>measurement.dip-angle-lock</name>
  <message>
   <source>Losses at one wheel angle</source>
   <translation>Ausfälle bei einem Radwinkel</translation>
  </message>
  <message>
   <source>Steady straight driving of 200 wheel turns or more, with losses in it.</source>
   <translation>Gleichmäßige Geradeausfahrt über 200 Radumdrehungen oder mehr, mit Ausfällen darin.</translation>
  </message>
  <message>
   <source>The losses of the {corner} wheel leave out the same {value} of its turn every time ({band}).</source>
   <translation>Die Ausfälle am Rad {corner} lassen jedes Mal dieselben {value} seiner Umdrehung aus ({band}).</translation>
  </message>
  <message>
   <source>a steady straight kilometre or more at 30 to 80 km/h while the {corner} wheel shows its fault</source>
   <translation>ein gleichmäßiger gerader Kilometer oder mehr mit 30 bis 80 km/h, während das Rad {corner} seinen Fehler zeigt</translation>
  </message>
  <message>
   <source>firmly locked</source>
   <translation>fest gebunden</translation>
  </message>
  <message>
   <source>locked</source>
   <translation>gebunden</translation>
  </message>
  <message>
   <source>not locked</source>
   <translation>nicht gebunden</translation>
  </message>
  <message>
   <source>partly locked</source>
   <translation>teilweise gebunden</translation>
  </message>
  <message>
   <source>sharply locked</source>
   <translation>scharf gebunden</translation>
  </message>
  <message>
   <source>slightly locked</source>
   <translation>leicht gebunden</translation>
  </message>
 </context>
 <context>
  <name>measurement.dip-share</name>
  <message>
   <source>In {value} more of its samples the {corner} wheel reads too slow for a moment than too fast ({band}).</source>
   <translation>Bei {value} mehr seiner Messwerte zeigt das Rad {corner} kurz zu wenig als kurz zu viel ({band}).</translation>
  </message>
  <message>
   <source>Samples briefly low</source>
   <translation>Messwerte kurz zu niedrig</translation>
  </message>
  <message>
   <source>Steady driving for a minute or more.</source>
   <translation>Gleichmäßige Fahrt, eine Minute oder mehr.</translation>
  </message>
  <message>
   <source>a few</source>
   <translation>einige</translation>
  </message>
  <message>
   <source>hardly any</source>
   <translation>kaum welche</translation>
  </message>
  <message>
   <source>many</source>
   <translation>viele</translation>
  </message>
  <message>
   <source>most</source>
   <translation>die meisten</translation>
  </message>
  <message>
   <source>one minute or more at a steady 30 to 80 km/h</source>
   <translation>eine Minute oder mehr mit gleichmäßigen 30 bis 80 km/h</translation>
  </message>
  <message>
   <source>some</source>
   <translation>etliche</translation>
  </message>
  <message>
   <source>very many</source>
   <translation>sehr viele</translation>
  </message>
 </context>
 <context>
  <name>measurement.drop-out-clustering</name>
  <message>
   <source>A recording with at least six drop-outs.</source>
   <translation>Eine Aufzeichnung mit mindestens sechs Ausfällen.</translation>
  </message>
  <message>
   <source>Clustering of the drop-outs</source>
   <translation>Häufung der Ausfälle</translation>
  </message>
  <message>
   <source>The drop-outs of the {corner} wheel bunch together {value} times as much as chance would make them ({band}).</source>
   <translation>Die Ausfälle am Rad {corner} häufen sich {value}-mal so stark, wie der Zufall sie streuen würde ({band}).</translation>
  </message>
  <message>
   <source>in clusters</source>
   <translation>in Häufungen</translation>
  </message>
  <message>
   <source>independent</source>
   <translation>unabhängig</translation>
  </message>
  <message>
   <source>somewhat clustered</source>
   <translation>etwas gehäuft</translation>
  </message>
  <message>
   <source>the drive in which the complaint appears, until the {corner} wheel has dropped out six times or more</source>
   <translation>die Fahrt, in der die Beanstandung auftritt, bis das Rad {corner} sechsmal oder öfter ausgefallen ist</translation>
  </message>
 </context>
 <context>
  <name>measurement.drop-out-length</name>
  <message>
   <source>A recording in which the drop-outs happen at least three times.</source>
   <translation>Eine Aufzeichnung, in der die Ausfälle mindestens dreimal vorkommen.</translation>
  </message>
  <message>
   <source>A typical drop-out of the {corner} wheel lasts {value} ({band}).</source>
   <translation>Ein typischer Ausfall am Rad {corner} dauert {value} ({band}).</translation>
  </message>
  <message>
   <source>Length of the drop-outs</source>
   <translation>Dauer der Ausfälle</translation>
  </message>
  <message>
   <source>a pulse or two</source>
   <translation>ein, zwei Impulse</translation>
  </message>
  <message>
   <source>medium</source>
   <translation>mittel</translation>
  </message>
  <message>
   <source>seconds</source>
   <translation>Sekunden</translation>
  </message>
  <message>
   <source>short</source>
   <translation>kurz</translation>
  </message>
  <message>
   <source>the drive in which the complaint appears, until the {corner} wheel has dropped out three times or more</source>
   <translation>die Fahrt, in der die Beanstandung auftritt, bis das Rad {corner} dreimal oder öfter ausgefallen ist</translation>
  </message>
  <message>
   <source>very short</source>
   <translation>sehr kurz</translation>
  </message>
 </context>
 <context>
  <name>measurement.drop-out-rate</name>
  <message>
   <source>Any driving above walking pace, one minute or more.</source>
   <translation>Beliebige Fahrt über Schritttempo, eine Minute oder mehr.</translation>
  </message>
  <message>
   <source>Drop-outs of this wheel alone</source>
   <translation>Ausfälle nur dieses Rades</translation>
  </message>
  <message>
   <source>The signal of the {corner} wheel alone drops out {value} ({band}).</source>
   <translation>Allein das Signal am Rad {corner} fällt {value} aus ({band}).</translation>
  </message>
  <message>
   <source>The signal of the {corner} wheel alone never drops out in this recording, so hardly more often than {least} on the whole.</source>
   <translation>Allein das Signal am Rad {corner} fällt in dieser Aufzeichnung nie aus, insgesamt also kaum öfter als {least}.</translation>
  </message>
  <message>
   <source>few</source>
   <translation>wenige</translation>
  </message>
  <message>
   <source>hardly ever</source>
   <translation>fast nie</translation>
  </message>
  <message>
   <source>many</source>
   <translation>viele</translation>
  </message>
  <message>
   <source>three minutes or more above walking pace, such as the drive in which the complaint appears</source>
   <translation>drei Minuten oder mehr über Schritttempo, etwa die Fahrt, in der die Beanstandung auftritt</translation>
  </message>
  <message>
   <source>very many</source>
   <translation>sehr viele</translation>
  </message>
 </context>
 <context>
  <name>measurement.first-bad-speed</name>
  <message>
   <source>First bad speed</source>
   <translation>Erste stumme Geschwindigkeit</translation>
  </message>
  <message>
   <source>Pulling away, the {corner} wheel stays silent up to {value} ({band}).</source>
   <translation>Beim Anfahren bleibt das Rad {corner} bis {value} stumm ({band}).</translation>
  </message>
  <message>
   <source>Three or more slow pull-aways, with a wheel that is silent first.</source>
   <translation>Dreimal oder öfter langsam anfahren, mit einem Rad, das zuerst stumm ist.</translation>
  </message>
  <message>
   <source>much too long</source>
   <translation>viel zu lange</translation>
  </message>
  <message>
   <source>slow</source>
   <translation>langsam</translation>
  </message>
  <message>
   <source>three slow pull-aways, rolling at walking pace for some seconds each</source>
   <translation>dreimal langsam anfahren, jedes Mal einige Sekunden im Schritttempo rollen</translation>
  </message>
  <message>
   <source>walking pace</source>
   <translation>Schritttempo</translation>
  </message>
 </context>
 <context>
  <name>measurement.harmed-share</name>
  <message>
   <source>Harmed part of the ring</source>
   <translation>Geschädigter Teil des Ringes</translation>
  </message>
  <message>
   <source>Steady straight driving of 200 wheel turns or more while the fault is present, recorded at 50 Hz or faster.</source>
   <translation>Gleichmäßige Geradeausfahrt über 200 Radumdrehungen oder mehr, während der Fehler da ist, aufgezeichnet mit 50 Hz oder schneller.</translation>
  </message>
  <message>
   <source>The drops in speed of the {corner} wheel are made on {value} of its ring ({band}).</source>
   <translation>Die Einbrüche am Rad {corner} entstehen auf {value} seines Ringes ({band}).</translation>
  </message>
  <message>
   <source>a small part</source>
   <translation>ein kleiner Teil</translation>
  </message>
  <message>
   <source>a spot</source>
   <translation>ein Fleck</translation>
  </message>
  <message>
   <source>a very wide part</source>
   <translation>ein sehr breiter Teil</translation>
  </message>
  <message>
   <source>a wide part</source>
   <translation>ein breiter Teil</translation>
  </message>
  <message>
   <source>some part</source>
   <translation>ein Teil</translation>
  </message>
  <message>
   <source>two minutes of steady straight driving at 25 to 40 km/h</source>
   <translation>zwei Minuten gleichmäßige Geradeausfahrt mit 25 bis 40 km/h</translation>
  </message>
 </context>
 <context>
  <name>measurement.harmonic-ratio</name>
  <message>
   <source>Higher orders against the other wheels</source>
   <translation>Höhere Ordnungen gegen die anderen Räder</translation>
  </message>
  <message>
   <source>Straight driving above 30 km/h for a minute or more, recorded at 20 Hz or faster.</source>
   <translation>Geradeausfahrt über 30 km/h, eine Minute oder mehr, aufgezeichnet mit 20 Hz oder schneller.</translation>
  </message>
  <message>
   <source>What comes more often than once a turn is {value} times as strong on the {corner} wheel as on the others ({band}).</source>
   <translation>Was öfter als einmal je Umdrehung kommt, ist am Rad {corner} {value}-mal so stark wie an den anderen ({band}).</translation>
  </message>
  <message>
   <source>clearly stronger</source>
   <translation>deutlich stärker</translation>
  </message>
  <message>
   <source>far stronger</source>
   <translation>weit stärker</translation>
  </message>
  <message>
   <source>much stronger</source>
   <translation>viel stärker</translation>
  </message>
  <message>
   <source>somewhat stronger</source>
   <translation>etwas stärker</translation>
  </message>
  <message>
   <source>stronger</source>
   <translation>stärker</translation>
  </message>
  <message>
   <source>two steady straight kilometres at 30 to 60 km/h on smooth road, recorded 20 times a second or more</source>
   <translation>zwei gleichmäßige gerade Kilometer mit 30 bis 60 km/h auf glatter Straße, 20-mal je Sekunde oder öfter aufgezeichnet</translation>
  </message>
  <message>
   <source>usual</source>
   <translation>üblich</translation>
  </message>
 </context>
 <context>
  <name>measurement.joint-drop-out-rate</name>
  <message>
   <source>All wheels drop out together {value} ({band}).</source>
   <translation>Alle Räder fallen zusammen aus, {value} ({band}).</translation>
  </message>
  <message>
   <source>Any driving above walking pace, one minute or more.</source>
   <translation>Beliebige Fahrt über Schritttempo, eine Minute oder mehr.</translation>
  </message>
  <message>
   <source>At no moment of this recording do all wheels drop out together, so hardly more often than {least} on the whole.</source>
   <translation>In dieser Aufzeichnung fallen nie alle Räder zusammen aus, insgesamt also kaum öfter als {least}.</translation>
  </message>
  <message>
   <source>Drop-outs of all wheels together</source>
   <translation>Ausfälle aller Räder zusammen</translation>
  </message>
  <message>
   <source>few</source>
   <translation>wenige</translation>
  </message>
  <message>
   <source>hardly ever</source>
   <translation>fast nie</translation>
  </message>
  <message>
   <source>many</source>
   <translation>viele</translation>
  </message>
  <message>
   <source>three minutes or more above walking pace, with the consumers on and over the roads on which the complaint appears</source>
   <translation>drei Minuten oder mehr über Schritttempo, mit eingeschalteten Verbrauchern und auf den Straßen, auf denen die Beanstandung auftritt</translation>
  </message>
 </context>
 <context>
  <name>measurement.last-good-speed</name>
  <message>
   <source>Last good speed</source>
   <translation>Letzte gelesene Geschwindigkeit</translation>
  </message>
  <message>
   <source>Slowing down, the {corner} wheel reads down to {value} ({band}).</source>
   <translation>Beim Langsamerwerden zeigt das Rad {corner} bis {value} herab etwas an ({band}).</translation>
  </message>
  <message>
   <source>Three or more slow stops, with a wheel that falls silent.</source>
   <translation>Drei oder mehr langsame Halte, mit einem Rad, das verstummt.</translation>
  </message>
  <message>
   <source>much too early</source>
   <translation>viel zu früh</translation>
  </message>
  <message>
   <source>slow</source>
   <translation>langsam</translation>
  </message>
  <message>
   <source>three slow stops, rolling at walking pace for some seconds each</source>
   <translation>drei langsame Halte, jedes Mal einige Sekunden im Schritttempo rollen</translation>
  </message>
  <message>
   <source>walking pace</source>
   <translation>Schritttempo</translation>
  </message>
 </context>
 <context>
  <name>measurement.line-amplitude</name>
  <message>
   <source>Once a turn the {corner} wheel reads up to {value} too fast and as much too slow ({band}).</source>
   <translation>Einmal je Umdrehung zeigt das Rad {corner} bis zu {value} zu viel und ebenso viel zu wenig ({band}).</translation>
  </message>
  <message>
   <source>Once-per-turn line</source>
   <translation>Linie einmal je Umdrehung</translation>
  </message>
  <message>
   <source>Straight driving above 30 km/h for a minute or more.</source>
   <translation>Geradeausfahrt über 30 km/h, eine Minute oder mehr.</translation>
  </message>
  <message>
   <source>large</source>
   <translation>groß</translation>
  </message>
  <message>
   <source>raised</source>
   <translation>erhöht</translation>
  </message>
  <message>
   <source>slightly raised</source>
   <translation>leicht erhöht</translation>
  </message>
  <message>
   <source>two steady straight kilometres at 30 to 80 km/h on smooth road, recorded 20 times a second or more</source>
   <translation>zwei gleichmäßige gerade Kilometer mit 30 bis 80 km/h auf glatter Straße, 20-mal je Sekunde oder öfter aufgezeichnet</translation>
  </message>
  <message>
   <source>usual</source>
   <translation>üblich</translation>
  </message>
  <message>
   <source>very large</source>
   <translation>sehr groß</translation>
  </message>
 </context>
 <context>
  <name>measurement.line-harmonic-share</name>
  <message>
   <source>Higher orders of the pattern</source>
   <translation>Höhere Ordnungen des Musters</translation>
  </message>
  <message>
   <source>Of the pattern that the {corner} wheel repeats every turn, {value} comes more often than twice a turn ({band}).</source>
   <translation>Von dem Muster, das das Rad {corner} in jeder Umdrehung wiederholt, kommen {value} öfter als zweimal je Umdrehung ({band}).</translation>
  </message>
  <message>
   <source>Straight driving above 30 km/h for a minute or more, recorded at 50 Hz or faster.</source>
   <translation>Geradeausfahrt über 30 km/h, eine Minute oder mehr, aufgezeichnet mit 50 Hz oder schneller.</translation>
  </message>
  <message>
   <source>a clean sine</source>
   <translation>reiner Sinus</translation>
  </message>
  <message>
   <source>mixed</source>
   <translation>gemischt</translation>
  </message>
  <message>
   <source>nearly a sine</source>
   <translation>fast ein Sinus</translation>
  </message>
  <message>
   <source>peaky</source>
   <translation>spitz</translation>
  </message>
  <message>
   <source>two steady straight kilometres at 30 to 60 km/h on smooth road, recorded 50 times a second or more</source>
   <translation>zwei gleichmäßige gerade Kilometer mit 30 bis 60 km/h auf glatter Straße, 50-mal je Sekunde oder öfter aufgezeichnet</translation>
  </message>
 </context>
 <context>
  <name>measurement.line-place</name>
  <message>
   <source>Another number of poles on the {corner} wheel explains the drive {value} as well as another tyre does ({band}).</source>
   <translation>Eine andere Polzahl am Rad {corner} erklärt die Fahrt {value} so gut wie ein anderer Reifen ({band}).</translation>
  </message>
  <message>
   <source>Steady straight driving above 30 km/h for a minute or more, recorded at 20 Hz or faster.</source>
   <translation>Gleichmäßige Geradeausfahrt über 30 km/h, eine Minute oder mehr, aufgezeichnet mit 20 Hz oder schneller.</translation>
  </message>
  <message>
   <source>Turn of the wheel against its count</source>
   <translation>Umdrehung des Rades gegen seine Zählung</translation>
  </message>
  <message>
   <source>another count</source>
   <translation>andere Polzahl</translation>
  </message>
  <message>
   <source>another tyre</source>
   <translation>anderer Reifen</translation>
  </message>
  <message>
   <source>probably another count</source>
   <translation>wahrscheinlich andere Polzahl</translation>
  </message>
  <message>
   <source>probably another tyre</source>
   <translation>wahrscheinlich anderer Reifen</translation>
  </message>
  <message>
   <source>rather another count</source>
   <translation>eher andere Polzahl</translation>
  </message>
  <message>
   <source>rather another tyre</source>
   <translation>eher anderer Reifen</translation>
  </message>
  <message>
   <source>two steady straight kilometres at 30 to 80 km/h on smooth road, recorded 20 times a second or more</source>
   <translation>zwei gleichmäßige gerade Kilometer mit 30 bis 80 km/h auf glatter Straße, 20-mal je Sekunde oder öfter aufgezeichnet</translation>
  </message>
  <message>
   <source>undecided</source>
   <translation>unentschieden</translation>
  </message>
 </context>
 <context>
  <name>measurement.line-ratio</name>
  <message>
   <source>Once-per-turn line against the other wheels</source>
   <translation>Linie einmal je Umdrehung gegen die anderen Räder</translation>
  </message>
  <message>
   <source>Straight driving above 30 km/h for a minute or more.</source>
   <translation>Geradeausfahrt über 30 km/h, eine Minute oder mehr.</translation>
  </message>
  <message>
   <source>The once-a-turn swing of the {corner} wheel is {value} times that of the others ({band}).</source>
   <translation>Die Schwankung je Umdrehung am Rad {corner} ist {value}-mal so groß wie an den anderen ({band}).</translation>
  </message>
  <message>
   <source>clearly stronger</source>
   <translation>deutlich stärker</translation>
  </message>
  <message>
   <source>far stronger</source>
   <translation>weit stärker</translation>
  </message>
  <message>
   <source>much stronger</source>
   <translation>viel stärker</translation>
  </message>
  <message>
   <source>somewhat stronger</source>
   <translation>etwas stärker</translation>
  </message>
  <message>
   <source>stronger</source>
   <translation>stärker</translation>
  </message>
  <message>
   <source>two steady straight kilometres at 30 to 80 km/h on smooth road, recorded 20 times a second or more</source>
   <translation>zwei gleichmäßige gerade Kilometer mit 30 bis 80 km/h auf glatter Straße, 20-mal je Sekunde oder öfter aufgezeichnet</translation>
  </message>
  <message>
   <source>usual</source>
   <translation>üblich</translation>
  </message>
 </context>
 <context>
  <name>measurement.load-rest-ratio</name>
  <message>
   <source>Curves of 1 m/s2 and more to both sides, eight seconds or more of each.</source>
   <translation>Kurven von 1 m/s2 und mehr nach beiden Seiten, je acht Sekunden oder mehr.</translation>
  </message>
  <message>
   <source>In {loaded_curve} curves, which load it, the {corner} wheel trembles {value} as much as in {other_curve} ones, beyond what the other wheels show there ({band}).</source>
   <translation>In {loaded_curve}kurven, die es belasten, zittert das Rad {corner} {value} so stark wie in {other_curve}kurven, über das hinaus, was die anderen Räder dort zeigen ({band}).</translation>
  </message>
  <message>
   <source>Scatter with side load</source>
   <translation>Streuung mit Seitenkraft</translation>
  </message>
  <message>
   <source>five steady {loaded_curve} curves at 40 to 60 km/h, as brisk as the road and the law allow, so that the {corner} wheel is loaded as the outer wheel, and five {other_curve} ones to compare with</source>
   <translation>fünf gleichmäßig gefahrene {loaded_curve}kurven mit 40 bis 60 km/h, so zügig, wie Straße und Vorschrift erlauben, damit das Rad {corner} als äußeres Rad belastet ist, und fünf {other_curve}kurven zum Vergleich</translation>
  </message>
  <message>
   <source>more as inner wheel</source>
   <translation>mehr als inneres Rad</translation>
  </message>
  <message>
   <source>more as outer wheel</source>
   <translation>mehr als äußeres Rad</translation>
  </message>
  <message>
   <source>no difference</source>
   <translation>kein Unterschied</translation>
  </message>
 </context>
 <context>
  <name>measurement.loaded-line</name>
  <message>
   <source>Brisk curves to both sides, five or more of each.</source>
   <translation>Zügige Kurven nach beiden Seiten, je fünf oder mehr.</translation>
  </message>
  <message>
   <source>Once-per-turn line under side load</source>
   <translation>Linie einmal je Umdrehung unter Seitenkraft</translation>
  </message>
  <message>
   <source>The once-a-turn swing of the {corner} wheel differs between {loaded_curve} curves, which load it, and {other_curve} ones by {value} of the speed ({band}).</source>
   <translation>Die Schwankung je Umdrehung am Rad {corner} unterscheidet sich zwischen {loaded_curve}kurven, die es belasten, und {other_curve}kurven um {value} der Geschwindigkeit ({band}).</translation>
  </message>
  <message>
   <source>five steady {loaded_curve} curves at 40 to 60 km/h, as brisk as the road and the law allow, so that the {corner} wheel is loaded as the outer wheel, and five {other_curve} ones to compare with</source>
   <translation>fünf gleichmäßig gefahrene {loaded_curve}kurven mit 40 bis 60 km/h, so zügig, wie Straße und Vorschrift erlauben, damit das Rad {corner} als äußeres Rad belastet ist, und fünf {other_curve}kurven zum Vergleich</translation>
  </message>
  <message>
   <source>larger as inner wheel</source>
   <translation>größer als inneres Rad</translation>
  </message>
  <message>
   <source>larger as outer wheel</source>
   <translation>größer als äußeres Rad</translation>
  </message>
  <message>
   <source>much larger as outer wheel</source>
   <translation>viel größer als äußeres Rad</translation>
  </message>
  <message>
   <source>no difference</source>
   <translation>kein Unterschied</translation>
  </message>
 </context>
 <context>
  <name>measurement.lone-dip-depth</name>
  <message>
   <source>A drive with five lone dips or more, recorded at 40 Hz or faster.</source>
   <translation>Eine Fahrt mit fünf einzelnen Einbrüchen oder mehr, aufgezeichnet mit 40 Hz oder schneller.</translation>
  </message>
  <message>
   <source>Depth of the lone dips</source>
   <translation>Tiefe der einzelnen Einbrüche</translation>
  </message>
  <message>
   <source>When the {corner} wheel alone reads too slow for a moment, it is by {value} ({band}).</source>
   <translation>Wenn allein das Rad {corner} kurz zu wenig zeigt, dann um {value} ({band}).</translation>
  </message>
  <message>
   <source>a large part</source>
   <translation>ein großer Teil</translation>
  </message>
  <message>
   <source>a part</source>
   <translation>ein Teil</translation>
  </message>
  <message>
   <source>most</source>
   <translation>das meiste</translation>
  </message>
  <message>
   <source>slight</source>
   <translation>gering</translation>
  </message>
  <message>
   <source>the drive in which the complaint appears, until the {corner} wheel has read short five times or more</source>
   <translation>die Fahrt, in der die Beanstandung auftritt, bis das Rad {corner} fünfmal oder öfter zu wenig gezeigt hat</translation>
  </message>
 </context>
 <context>
  <name>measurement.lone-dip-rate</name>
  <message>
   <source>Lone dips</source>
   <translation>Einzelne Einbrüche</translation>
  </message>
  <message>
   <source>The {corner} wheel alone reads too slow for a moment {value} ({band}).</source>
   <translation>Allein das Rad {corner} zeigt {value} kurz zu wenig ({band}).</translation>
  </message>
  <message>
   <source>Three minutes or more of ordinary driving, recorded at 40 Hz or faster.</source>
   <translation>Drei Minuten oder mehr gewöhnliche Fahrt, aufgezeichnet mit 40 Hz oder schneller.</translation>
  </message>
  <message>
   <source>few</source>
   <translation>wenige</translation>
  </message>
  <message>
   <source>hardly ever</source>
   <translation>fast nie</translation>
  </message>
  <message>
   <source>many</source>
   <translation>viele</translation>
  </message>
  <message>
   <source>some</source>
   <translation>etliche</translation>
  </message>
  <message>
   <source>three minutes or more of ordinary driving on even road, recorded 40 times a second or more</source>
   <translation>drei Minuten oder mehr gewöhnliche Fahrt auf ebener Straße, 40-mal je Sekunde oder öfter aufgezeichnet</translation>
  </message>
  <message>
   <source>very many</source>
   <translation>sehr viele</translation>
  </message>
 </context>
 <context>
  <name>measurement.lone-dip-scatter</name>
  <message>
   <source>A drive with twelve lone dips or more, recorded at 40 Hz or faster.</source>
   <translation>Eine Fahrt mit zwölf einzelnen Einbrüchen oder mehr, aufgezeichnet mit 40 Hz oder schneller.</translation>
  </message>
  <message>
   <source>Clusters of the lone dips</source>
   <translation>Häufungen der einzelnen Einbrüche</translation>
  </message>
  <message>
   <source>The moments in which the {corner} wheel alone reads too slow bunch together {value} times as much as chance would make them ({band}).</source>
   <translation>Die Augenblicke, in denen allein das Rad {corner} zu wenig zeigt, häufen sich {value}-mal so stark, wie der Zufall sie streuen würde ({band}).</translation>
  </message>
  <message>
   <source>by chance</source>
   <translation>zufällig</translation>
  </message>
  <message>
   <source>evenly</source>
   <translation>gleichmäßig</translation>
  </message>
  <message>
   <source>in clusters</source>
   <translation>in Häufungen</translation>
  </message>
  <message>
   <source>in loose clusters</source>
   <translation>in lockeren Häufungen</translation>
  </message>
  <message>
   <source>the drive in which the complaint appears, until the {corner} wheel has read short twelve times or more</source>
   <translation>die Fahrt, in der die Beanstandung auftritt, bis das Rad {corner} zwölfmal oder öfter zu wenig gezeigt hat</translation>
  </message>
 </context>
 <context>
  <name>measurement.lone-peak-rate</name>
  <message>
   <source>Lone peaks</source>
   <translation>Einzelne Spitzen</translation>
  </message>
  <message>
   <source>The {corner} wheel alone reads too fast for a moment {value} ({band}).</source>
   <translation>Allein das Rad {corner} zeigt {value} kurz zu viel ({band}).</translation>
  </message>
  <message>
   <source>Three minutes or more of ordinary driving, recorded at 40 Hz or faster.</source>
   <translation>Drei Minuten oder mehr gewöhnliche Fahrt, aufgezeichnet mit 40 Hz oder schneller.</translation>
  </message>
  <message>
   <source>few</source>
   <translation>wenige</translation>
  </message>
  <message>
   <source>hardly ever</source>
   <translation>fast nie</translation>
  </message>
  <message>
   <source>many</source>
   <translation>viele</translation>
  </message>
  <message>
   <source>some</source>
   <translation>etliche</translation>
  </message>
  <message>
   <source>three minutes or more of ordinary driving on even road, recorded 40 times a second or more</source>
   <translation>drei Minuten oder mehr gewöhnliche Fahrt auf ebener Straße, 40-mal je Sekunde oder öfter aufgezeichnet</translation>
  </message>
 </context>
 <context>
  <name>measurement.loss-load</name>
  <message>
   <source>A drive with curves to both sides, with a loss in it.</source>
   <translation>Eine Fahrt mit Kurven nach beiden Seiten, mit einem Ausfall darin.</translation>
  </message>
  <message>
   <source>Side load at the losses</source>
   <translation>Seitenkraft bei den Ausfällen</translation>
  </message>
  <message>
   <source>The {corner} wheel loses its signal mostly {band} (side load outwards above {value} in three of four losses).</source>
   <translation>Das Rad {corner} verliert sein Signal meist {band} (Seitenkraft nach außen über {value} bei drei von vier Ausfällen).</translation>
  </message>
  <message>
   <source>as the inner wheel</source>
   <translation>als inneres Rad</translation>
  </message>
  <message>
   <source>as the loaded outer wheel</source>
   <translation>als belastetes äußeres Rad</translation>
  </message>
  <message>
   <source>as the outer wheel with little load</source>
   <translation>als wenig belastetes äußeres Rad</translation>
  </message>
  <message>
   <source>as the well loaded outer wheel</source>
   <translation>als stark belastetes äußeres Rad</translation>
  </message>
  <message>
   <source>five steady {loaded_curve} curves at 40 to 60 km/h, as brisk as the road and the law allow, so that the {corner} wheel is loaded as the outer wheel, and as much straight driving</source>
   <translation>fünf gleichmäßig gefahrene {loaded_curve}kurven mit 40 bis 60 km/h, so zügig, wie Straße und Vorschrift erlauben, damit das Rad {corner} als äußeres Rad belastet ist, und ebenso viel Geradeausfahrt</translation>
  </message>
  <message>
   <source>going straight</source>
   <translation>bei Geradeausfahrt</translation>
  </message>
 </context>
 <context>
  <name>measurement.loss-trend</name>
  <message>
   <source>A drive of several minutes with four losses or more.</source>
   <translation>Eine Fahrt von mehreren Minuten mit vier Ausfällen oder mehr.</translation>
  </message>
  <message>
   <source>Losses later in the drive</source>
   <translation>Ausfälle später in der Fahrt</translation>
  </message>
  <message>
   <source>The losses of the {corner} wheel come, on average, after {value} of the drive, where 50 % is evenly spread ({band}).</source>
   <translation>Die Ausfälle am Rad {corner} kommen im Mittel nach {value} der Fahrt; 50 % hieße gleichmäßig verteilt ({band}).</translation>
  </message>
  <message>
   <source>a drive long enough for the sensor to warm up, twenty minutes or more</source>
   <translation>eine Fahrt, die lang genug ist, dass der Sensor warm wird, zwanzig Minuten oder mehr</translation>
  </message>
  <message>
   <source>evenly</source>
   <translation>gleichmäßig</translation>
  </message>
  <message>
   <source>late</source>
   <translation>spät</translation>
  </message>
  <message>
   <source>rather early</source>
   <translation>eher früh</translation>
  </message>
  <message>
   <source>rather late</source>
   <translation>eher spät</translation>
  </message>
 </context>
 <context>
  <name>measurement.missing-steadiness</name>
  <message>
   <source>An edge that the {corner} wheel lacks in one turn is lacking in another one too in {value} of the cases ({band}).</source>
   <translation>Eine Flanke, die dem Rad {corner} in einer Umdrehung fehlt, fehlt in {value} der Fälle auch in einer anderen ({band}).</translation>
  </message>
  <message>
   <source>The times of single edges (edge_times) from a drive in which the fault shows itself.</source>
   <translation>Die Zeiten einzelner Flanken (edge_times) aus einer Fahrt, in der sich der Fehler zeigt.</translation>
  </message>
  <message>
   <source>Whether the same edges are missing</source>
   <translation>Ob dieselben Flanken fehlen</translation>
  </message>
  <message>
   <source>always the same</source>
   <translation>immer dieselben</translation>
  </message>
  <message>
   <source>by chance</source>
   <translation>zufällig</translation>
  </message>
  <message>
   <source>often the same</source>
   <translation>oft dieselben</translation>
  </message>
  <message>
   <source>the drive in which the complaint appears, with single edges recorded</source>
   <translation>die Fahrt, in der die Beanstandung auftritt, mit aufgezeichneten einzelnen Flanken</translation>
  </message>
 </context>
 <context>
  <name>measurement.noise-ratio</name>
  <message>
   <source>Noise against the other wheels</source>
   <translation>Rauschen gegen die anderen Räder</translation>
  </message>
  <message>
   <source>Steady driving for half a minute or more.</source>
   <translation>Gleichmäßige Fahrt, eine halbe Minute oder mehr.</translation>
  </message>
  <message>
   <source>The speed of the {corner} wheel trembles {value} times as much as that of the others ({band}).</source>
   <translation>Die Geschwindigkeit am Rad {corner} zittert {value}-mal so stark wie die der anderen ({band}).</translation>
  </message>
  <message>
   <source>clearly raised</source>
   <translation>deutlich erhöht</translation>
  </message>
  <message>
   <source>high</source>
   <translation>hoch</translation>
  </message>
  <message>
   <source>one minute or more at a steady 30 to 80 km/h on smooth road</source>
   <translation>eine Minute oder mehr mit gleichmäßigen 30 bis 80 km/h auf glatter Straße</translation>
  </message>
  <message>
   <source>raised</source>
   <translation>erhöht</translation>
  </message>
  <message>
   <source>silent</source>
   <translation>stumm</translation>
  </message>
  <message>
   <source>usual</source>
   <translation>üblich</translation>
  </message>
  <message>
   <source>very high</source>
   <translation>sehr hoch</translation>
  </message>
 </context>
 <context>
  <name>measurement.pole-order-one</name>
  <message>
   <source>Pole by pole, the ring of the {corner} wheel makes its speed seem to swing by {value} once a turn ({band}).</source>
   <translation>Pol für Pol lässt der Ring des Rades {corner} die Geschwindigkeit scheinbar um {value} je Umdrehung schwanken ({band}).</translation>
  </message>
  <message>
   <source>Run-out of the ring, pole by pole</source>
   <translation>Rundlauf des Ringes, Pol für Pol</translation>
  </message>
  <message>
   <source>The times of single edges (edge_times), a quarter of a minute or more of steady driving.</source>
   <translation>Die Zeiten einzelner Flanken (edge_times), eine Viertelminute oder mehr gleichmäßige Fahrt.</translation>
  </message>
  <message>
   <source>one minute of steady driving at 30 to 80 km/h</source>
   <translation>eine Minute gleichmäßige Fahrt mit 30 bis 80 km/h</translation>
  </message>
  <message>
   <source>raised</source>
   <translation>erhöht</translation>
  </message>
  <message>
   <source>strong</source>
   <translation>stark</translation>
  </message>
  <message>
   <source>usual</source>
   <translation>üblich</translation>
  </message>
  <message>
   <source>very strong</source>
   <translation>sehr stark</translation>
  </message>
 </context>
 <context>
  <name>measurement.pole-spread</name>
  <message>
   <source>The poles of the {corner} wheel's ring stand {value} as unevenly as those of the others ({band}).</source>
   <translation>Die Pole am Ring des Rades {corner} stehen {value} so ungleichmäßig wie die der anderen ({band}).</translation>
  </message>
  <message>
   <source>The times of single edges (edge_times), a quarter of a minute or more of steady driving.</source>
   <translation>Die Zeiten einzelner Flanken (edge_times), eine Viertelminute oder mehr gleichmäßige Fahrt.</translation>
  </message>
  <message>
   <source>Unevenness of the poles</source>
   <translation>Ungleichmäßigkeit der Pole</translation>
  </message>
  <message>
   <source>as even as the others</source>
   <translation>so gleichmäßig wie die anderen</translation>
  </message>
  <message>
   <source>one minute of steady driving at 30 to 80 km/h</source>
   <translation>eine Minute gleichmäßige Fahrt mit 30 bis 80 km/h</translation>
  </message>
  <message>
   <source>uneven</source>
   <translation>ungleichmäßig</translation>
  </message>
  <message>
   <source>very uneven</source>
   <translation>sehr ungleichmäßig</translation>
  </message>
 </context>
 <context>
  <name>measurement.poles-missing</name>
  <message>
   <source>Edges missing in every turn</source>
   <translation>Fehlende Flanken je Umdrehung</translation>
  </message>
  <message>
   <source>In every turn the ring of the {corner} wheel lacks {value} edges ({band}).</source>
   <translation>In jeder Umdrehung fehlen dem Ring des Rades {corner} {value} Flanken ({band}).</translation>
  </message>
  <message>
   <source>The times of single edges (edge_times), a quarter of a minute or more of steady driving.</source>
   <translation>Die Zeiten einzelner Flanken (edge_times), eine Viertelminute oder mehr gleichmäßige Fahrt.</translation>
  </message>
  <message>
   <source>many</source>
   <translation>viele</translation>
  </message>
  <message>
   <source>none</source>
   <translation>keine</translation>
  </message>
  <message>
   <source>now and then one</source>
   <translation>ab und zu eine</translation>
  </message>
  <message>
   <source>one minute of steady driving at 30 to 80 km/h</source>
   <translation>eine Minute gleichmäßige Fahrt mit 30 bis 80 km/h</translation>
  </message>
  <message>
   <source>one to three</source>
   <translation>eine bis drei</translation>
  </message>
 </context>
 <context>
  <name>measurement.pulse-offset</name>
  <message>
   <source>Pulse counters of the wheels in the recording, and half a minute of straight driving above 20 km/h.</source>
   <translation>Impulszähler der Räder in der Aufzeichnung und eine halbe Minute Geradeausfahrt über 20 km/h.</translation>
  </message>
  <message>
   <source>Pulses per metre</source>
   <translation>Impulse je Meter</translation>
  </message>
  <message>
   <source>The pulses of the {corner} wheel in a metre differ by {value} from what the others let expect ({band}).</source>
   <translation>Die Impulse des Rades {corner} je Meter weichen um {value} von dem ab, was die anderen erwarten lassen ({band}).</translation>
  </message>
  <message>
   <source>clearly fewer</source>
   <translation>deutlich weniger</translation>
  </message>
  <message>
   <source>clearly more</source>
   <translation>deutlich mehr</translation>
  </message>
  <message>
   <source>equal</source>
   <translation>gleich</translation>
  </message>
  <message>
   <source>far fewer</source>
   <translation>weit weniger</translation>
  </message>
  <message>
   <source>far more</source>
   <translation>weit mehr</translation>
  </message>
  <message>
   <source>fewer</source>
   <translation>weniger</translation>
  </message>
  <message>
   <source>half a minute or more of straight driving above 20 km/h, all tyres at their pressure</source>
   <translation>eine halbe Minute oder mehr Geradeausfahrt über 20 km/h, alle Reifen mit richtigem Druck</translation>
  </message>
  <message>
   <source>more</source>
   <translation>mehr</translation>
  </message>
 </context>
 <context>
  <name>measurement.quiet-share</name>
  <message>
   <source>Over {value} of its turn the {corner} wheel reads as steadily as a sound one ({band}).</source>
   <translation>Über {value} seiner Umdrehung zeigt das Rad {corner} so ruhig an wie ein gesundes ({band}).</translation>
  </message>
  <message>
   <source>Sound part of the ring</source>
   <translation>Gesunder Teil des Ringes</translation>
  </message>
  <message>
   <source>Steady straight driving of 200 wheel turns or more, with losses in it.</source>
   <translation>Gleichmäßige Geradeausfahrt über 200 Radumdrehungen oder mehr, mit Ausfällen darin.</translation>
  </message>
  <message>
   <source>a steady straight kilometre or more at 30 to 80 km/h while the {corner} wheel shows its fault, recorded 50 times a second or more</source>
   <translation>ein gleichmäßiger gerader Kilometer oder mehr mit 30 bis 80 km/h, während das Rad {corner} seinen Fehler zeigt, 50-mal je Sekunde oder öfter aufgezeichnet</translation>
  </message>
  <message>
   <source>all but a spot</source>
   <translation>alles bis auf einen Fleck</translation>
  </message>
  <message>
   <source>half</source>
   <translation>die Hälfte</translation>
  </message>
  <message>
   <source>little</source>
   <translation>wenig</translation>
  </message>
  <message>
   <source>most</source>
   <translation>das meiste</translation>
  </message>
  <message>
   <source>nearly all</source>
   <translation>fast alles</translation>
  </message>
  <message>
   <source>some</source>
   <translation>etwas</translation>
  </message>
 </context>
 <context>
  <name>measurement.ratio-count-fit</name>
  <message>
   <source>Another number of poles explains the steady offset of the {corner} wheel {value} as well as any other reason does ({band}).</source>
   <translation>Eine andere Polzahl erklärt die ständige Abweichung am Rad {corner} {value} so gut wie jeder andere Grund ({band}).</translation>
  </message>
  <message>
   <source>Fit to an encoder count</source>
   <translation>Passung zu einer Polzahl</translation>
  </message>
  <message>
   <source>Straight driving above 30 km/h for some minutes.</source>
   <translation>Geradeausfahrt über 30 km/h, einige Minuten.</translation>
  </message>
  <message>
   <source>a count</source>
   <translation>eine Polzahl</translation>
  </message>
  <message>
   <source>five minutes of straight driving at a steady 40 to 80 km/h, all tyres at their pressure</source>
   <translation>fünf Minuten Geradeausfahrt mit gleichmäßigen 40 bis 80 km/h, alle Reifen mit richtigem Druck</translation>
  </message>
  <message>
   <source>hardly a count</source>
   <translation>kaum eine Polzahl</translation>
  </message>
  <message>
   <source>may be a count</source>
   <translation>vielleicht eine Polzahl</translation>
  </message>
  <message>
   <source>no count</source>
   <translation>keine Polzahl</translation>
  </message>
 </context>
 <context>
  <name>measurement.ratio-offset</name>
  <message>
   <source>Constant ratio</source>
   <translation>Gleichbleibendes Verhältnis</translation>
  </message>
  <message>
   <source>On straight roads the {corner} wheel reads {value} off what the others let expect, all the time ({band}).</source>
   <translation>Auf gerader Straße weicht das Rad {corner} ständig um {value} von dem ab, was die anderen erwarten lassen ({band}).</translation>
  </message>
  <message>
   <source>Straight driving above 30 km/h for half a minute or more.</source>
   <translation>Geradeausfahrt über 30 km/h, eine halbe Minute oder mehr.</translation>
  </message>
  <message>
   <source>a little high</source>
   <translation>etwas zu hoch</translation>
  </message>
  <message>
   <source>a little low</source>
   <translation>etwas zu niedrig</translation>
  </message>
  <message>
   <source>clearly high</source>
   <translation>deutlich zu hoch</translation>
  </message>
  <message>
   <source>clearly low</source>
   <translation>deutlich zu niedrig</translation>
  </message>
  <message>
   <source>equal</source>
   <translation>gleich</translation>
  </message>
  <message>
   <source>far high</source>
   <translation>weit zu hoch</translation>
  </message>
  <message>
   <source>far low</source>
   <translation>weit zu niedrig</translation>
  </message>
  <message>
   <source>high</source>
   <translation>hoch</translation>
  </message>
  <message>
   <source>low</source>
   <translation>zu niedrig</translation>
  </message>
  <message>
   <source>one minute of straight driving at a steady 40 to 80 km/h</source>
   <translation>eine Minute Geradeausfahrt mit gleichmäßigen 40 bis 80 km/h</translation>
  </message>
  <message>
   <source>rather high</source>
   <translation>merklich zu hoch</translation>
  </message>
  <message>
   <source>rather low</source>
   <translation>merklich zu niedrig</translation>
  </message>
  <message>
   <source>very high</source>
   <translation>sehr hoch</translation>
  </message>
  <message>
   <source>very low</source>
   <translation>sehr niedrig</translation>
  </message>
 </context>
 <context>
  <name>measurement.revolution-offset</name>
  <message>
   <source>Counted by its own pulses, a turn of the {corner} wheel differs in length by {value} from a turn of the others ({band}).</source>
   <translation>Nach den eigenen Impulsen gezählt, weicht eine Umdrehung des Rades {corner} in der Länge um {value} von einer Umdrehung der anderen ab ({band}).</translation>
  </message>
  <message>
   <source>Length of a turn by the wheel's own counting</source>
   <translation>Länge einer Umdrehung nach eigener Zählung</translation>
  </message>
  <message>
   <source>Steady straight driving above 30 km/h for a minute or more, recorded at 20 Hz or faster.</source>
   <translation>Gleichmäßige Geradeausfahrt über 30 km/h, eine Minute oder mehr, aufgezeichnet mit 20 Hz oder schneller.</translation>
  </message>
  <message>
   <source>equal</source>
   <translation>gleich</translation>
  </message>
  <message>
   <source>longer</source>
   <translation>länger</translation>
  </message>
  <message>
   <source>much longer</source>
   <translation>viel länger</translation>
  </message>
  <message>
   <source>much shorter</source>
   <translation>viel kürzer</translation>
  </message>
  <message>
   <source>shorter</source>
   <translation>kürzer</translation>
  </message>
  <message>
   <source>two steady straight kilometres at 30 to 80 km/h on smooth road, recorded 20 times a second or more</source>
   <translation>zwei gleichmäßige gerade Kilometer mit 30 bis 80 km/h auf glatter Straße, 20-mal je Sekunde oder öfter aufgezeichnet</translation>
  </message>
 </context>
 <context>
  <name>measurement.road-order</name>
  <message>
   <source>A minute or more above 30 km/h on an ordinary road, recorded at 50 Hz or faster without gaps.</source>
   <translation>Eine Minute oder mehr über 30 km/h auf gewöhnlicher Straße, aufgezeichnet mit 50 Hz oder schneller und ohne Lücken.</translation>
  </message>
  <message>
   <source>Order in which the wheels meet the road</source>
   <translation>Reihenfolge, in der die Räder die Straße treffen</translation>
  </message>
  <message>
   <source>With wheels exchanged, how well the rear ones repeat the road of the front ones would change by {value} ({band}).</source>
   <translation>Mit getauschten Rädern würde sich um {value} ändern, wie gut die Hinterräder die Straße der Vorderräder wiederholen ({band}).</translation>
  </message>
  <message>
   <source>as wired</source>
   <translation>wie verdrahtet</translation>
  </message>
  <message>
   <source>clearly exchanged</source>
   <translation>deutlich vertauscht</translation>
  </message>
  <message>
   <source>exchanged</source>
   <translation>vertauscht</translation>
  </message>
  <message>
   <source>two minutes above 30 km/h on an ordinary, not quite even road</source>
   <translation>zwei Minuten über 30 km/h auf einer gewöhnlichen, nicht ganz ebenen Straße</translation>
  </message>
  <message>
   <source>undecided</source>
   <translation>unentschieden</translation>
  </message>
 </context>
 <context>
  <name>measurement.side-coupling</name>
  <message>
   <source>Curves to both sides, with five losses or more in them.</source>
   <translation>Kurven nach beiden Seiten, mit fünf Ausfällen oder mehr darin.</translation>
  </message>
  <message>
   <source>In {loaded_curve} curves, which load it, the {corner} wheel loses its signal {value} as often as in {other_curve} ones ({band}).</source>
   <translation>In {loaded_curve}kurven, die es belasten, verliert das Rad {corner} sein Signal {value} so oft wie in {other_curve}kurven ({band}).</translation>
  </message>
  <message>
   <source>Losses in the curve that loads the wheel</source>
   <translation>Ausfälle in der Kurve, die das Rad belastet</translation>
  </message>
  <message>
   <source>five steady {loaded_curve} curves at 40 to 60 km/h, as brisk as the road and the law allow, so that the {corner} wheel is loaded as the outer wheel, and five {other_curve} ones to compare with</source>
   <translation>fünf gleichmäßig gefahrene {loaded_curve}kurven mit 40 bis 60 km/h, so zügig, wie Straße und Vorschrift erlauben, damit das Rad {corner} als äußeres Rad belastet ist, und fünf {other_curve}kurven zum Vergleich</translation>
  </message>
  <message>
   <source>more as inner wheel</source>
   <translation>mehr als inneres Rad</translation>
  </message>
  <message>
   <source>more as outer wheel</source>
   <translation>mehr als äußeres Rad</translation>
  </message>
  <message>
   <source>no difference</source>
   <translation>kein Unterschied</translation>
  </message>
  <message>
   <source>only as outer wheel</source>
   <translation>nur als äußeres Rad</translation>
  </message>
 </context>
 <context>
  <name>measurement.side-load-contrast</name>
  <message>
   <source>Brisk curves to both sides, five or more of each.</source>
   <translation>Zügige Kurven nach beiden Seiten, je fünf oder mehr.</translation>
  </message>
  <message>
   <source>In {loaded_curve} curves, which load it, the {corner} wheel is disturbed {value} as much as in {other_curve} ones ({band}).</source>
   <translation>In {loaded_curve}kurven, die es belasten, ist das Rad {corner} {value} so stark gestört wie in {other_curve}kurven ({band}).</translation>
  </message>
  <message>
   <source>Losses with side load</source>
   <translation>Ausfälle mit Seitenkraft</translation>
  </message>
  <message>
   <source>a little more as outer wheel</source>
   <translation>etwas mehr als äußeres Rad</translation>
  </message>
  <message>
   <source>far more as outer wheel</source>
   <translation>weit mehr als äußeres Rad</translation>
  </message>
  <message>
   <source>five steady {loaded_curve} curves at 40 to 60 km/h, as brisk as the road and the law allow, so that the {corner} wheel is loaded as the outer wheel, and five {other_curve} ones to compare with</source>
   <translation>fünf gleichmäßig gefahrene {loaded_curve}kurven mit 40 bis 60 km/h, so zügig, wie Straße und Vorschrift erlauben, damit das Rad {corner} als äußeres Rad belastet ist, und fünf {other_curve}kurven zum Vergleich</translation>
  </message>
  <message>
   <source>more as inner wheel</source>
   <translation>mehr als inneres Rad</translation>
  </message>
  <message>
   <source>more as outer wheel</source>
   <translation>mehr als äußeres Rad</translation>
  </message>
  <message>
   <source>no difference</source>
   <translation>kein Unterschied</translation>
  </message>
  <message>
   <source>only as outer wheel</source>
   <translation>nur als äußeres Rad</translation>
  </message>
 </context>
 <context>
  <name>measurement.single-spot-rest</name>
  <message>
   <source>One single spot on the ring of the {corner} wheel leaves {value} of the mean rise and fall of its speed over a turn unexplained ({band}).</source>
   <translation>Eine einzige Stelle am Ring des Rads {corner} lässt {value} vom mittleren Auf und Ab der Geschwindigkeit über die Umdrehung unerklärt ({band}).</translation>
  </message>
  <message>
   <source>Steady straight driving of 200 wheel turns or more while the fault is present, recorded at 20 Hz or faster.</source>
   <translation>Gleichmäßige Geradeausfahrt über 200 Radumdrehungen oder mehr, während der Fehler da ist, aufgezeichnet mit 20 Hz oder schneller.</translation>
  </message>
  <message>
   <source>What one spot leaves unexplained</source>
   <translation>Was eine einzige Stelle unerklärt lässt</translation>
  </message>
  <message>
   <source>a little besides</source>
   <translation>ein wenig daneben</translation>
  </message>
  <message>
   <source>hardly anything besides</source>
   <translation>kaum etwas daneben</translation>
  </message>
  <message>
   <source>mostly something else</source>
   <translation>meist etwas anderes</translation>
  </message>
  <message>
   <source>much besides</source>
   <translation>viel daneben</translation>
  </message>
  <message>
   <source>one spot explains it</source>
   <translation>eine Stelle erklärt es</translation>
  </message>
  <message>
   <source>two minutes of steady straight driving at 25 to 40 km/h</source>
   <translation>zwei Minuten gleichmäßige Geradeausfahrt mit 25 bis 40 km/h</translation>
  </message>
 </context>
 <context>
  <name>measurement.speed-loss-slope</name>
  <message>
   <source>At twice the speed the signal of the {corner} wheel is lost or falls {value} as often ({band}).</source>
   <translation>Bei doppelter Geschwindigkeit fällt das Signal am Rad {corner} {value} so oft aus oder ein ({band}).</translation>
  </message>
  <message>
   <source>Driving at slow and at high speed, a minute or more of each.</source>
   <translation>Langsame und schnelle Fahrt, je eine Minute oder mehr.</translation>
  </message>
  <message>
   <source>Losses against speed</source>
   <translation>Ausfälle über der Geschwindigkeit</translation>
  </message>
  <message>
   <source>a little more when fast</source>
   <translation>etwas öfter bei schneller Fahrt</translation>
  </message>
  <message>
   <source>at any speed alike</source>
   <translation>bei jeder Geschwindigkeit gleich</translation>
  </message>
  <message>
   <source>in step with the speed</source>
   <translation>im Takt der Geschwindigkeit</translation>
  </message>
  <message>
   <source>mainly when fast</source>
   <translation>vor allem bei schneller Fahrt</translation>
  </message>
  <message>
   <source>mainly when slow</source>
   <translation>vor allem bei langsamer Fahrt</translation>
  </message>
  <message>
   <source>more when fast</source>
   <translation>öfter bei schneller Fahrt</translation>
  </message>
  <message>
   <source>rather when slow</source>
   <translation>eher bei langsamer Fahrt</translation>
  </message>
  <message>
   <source>two minutes at 20 to 30 km/h and two minutes at 60 to 80 km/h, while the {corner} wheel shows its fault</source>
   <translation>zwei Minuten mit 20 bis 30 km/h und zwei Minuten mit 60 bis 80 km/h, während das Rad {corner} seinen Fehler zeigt</translation>
  </message>
 </context>
 <context>
  <name>measurement.spike-share</name>
  <message>
   <source>In {value} more of its samples the {corner} wheel reads too fast for a moment than too slow ({band}).</source>
   <translation>Bei {value} mehr seiner Messwerte zeigt das Rad {corner} kurz zu viel als kurz zu wenig ({band}).</translation>
  </message>
  <message>
   <source>Samples briefly high</source>
   <translation>Messwerte kurz zu hoch</translation>
  </message>
  <message>
   <source>Steady driving for a minute or more.</source>
   <translation>Gleichmäßige Fahrt, eine Minute oder mehr.</translation>
  </message>
  <message>
   <source>a few</source>
   <translation>einige</translation>
  </message>
  <message>
   <source>hardly any</source>
   <translation>kaum welche</translation>
  </message>
  <message>
   <source>many</source>
   <translation>viele</translation>
  </message>
  <message>
   <source>one minute or more at a steady 30 to 80 km/h</source>
   <translation>eine Minute oder mehr mit gleichmäßigen 30 bis 80 km/h</translation>
  </message>
  <message>
   <source>some</source>
   <translation>etliche</translation>
  </message>
 </context>
 <context>
  <name>measurement.steering-coupling</name>
  <message>
   <source>Losses at steering lock</source>
   <translation>Ausfälle bei Lenkeinschlag</translation>
  </message>
  <message>
   <source>Tight turns and straight driving at the same slow speed, with five losses or more.</source>
   <translation>Enges Wenden und Geradeausfahrt mit derselben langsamen Geschwindigkeit, mit fünf Ausfällen oder mehr.</translation>
  </message>
  <message>
   <source>With the steering turned far the {corner} wheel loses its signal {value} as often as without, at the same speed ({band}).</source>
   <translation>Bei starkem Lenkeinschlag verliert das Rad {corner} sein Signal {value} so oft wie ohne, bei derselben Geschwindigkeit ({band}).</translation>
  </message>
  <message>
   <source>five tight turns to each side on a yard, and straight driving as slow</source>
   <translation>fünfmal eng wenden nach jeder Seite auf einem Hof und ebenso langsame Geradeausfahrt</translation>
  </message>
  <message>
   <source>more at lock</source>
   <translation>mehr bei Lenkeinschlag</translation>
  </message>
  <message>
   <source>mostly at lock</source>
   <translation>meist bei Lenkeinschlag</translation>
  </message>
  <message>
   <source>no difference</source>
   <translation>kein Unterschied</translation>
  </message>
  <message>
   <source>rather when straight</source>
   <translation>eher geradeaus</translation>
  </message>
 </context>
 <context>
  <name>measurement.stuck-share</name>
  <message>
   <source>Driving with changing speed.</source>
   <translation>Fahrt mit wechselnder Geschwindigkeit.</translation>
  </message>
  <message>
   <source>The {corner} wheel alone is never frozen at one value for 0.3 s or more while it must change.</source>
   <translation>Allein das Rad {corner} bleibt nie 0.3 s oder länger auf einem Wert stehen, während er sich ändern muss.</translation>
  </message>
  <message>
   <source>The {corner} wheel stays frozen at one value for {value} of the time the car moves ({band}).</source>
   <translation>Das Rad {corner} bleibt während {value} der Zeit, in der das Fahrzeug rollt, auf einem Wert stehen ({band}).</translation>
  </message>
  <message>
   <source>Time frozen</source>
   <translation>Zeit mit eingefrorenem Wert</translation>
  </message>
  <message>
   <source>never</source>
   <translation>nie</translation>
  </message>
  <message>
   <source>often</source>
   <translation>oft</translation>
  </message>
  <message>
   <source>sometimes</source>
   <translation>manchmal</translation>
  </message>
  <message>
   <source>two minutes or more in which the speed keeps changing, as in town traffic</source>
   <translation>zwei Minuten oder mehr mit ständig wechselnder Geschwindigkeit, wie im Stadtverkehr</translation>
  </message>
 </context>
 <context>
  <name>measurement.substituted-share</name>
  <message>
   <source>At no time does the {corner} wheel read a speed of which its own counter gives less than half the pulses, for 0.1 s and eight pulses or more.</source>
   <translation>Das Rad {corner} zeigt nie 0.1 s und acht Impulse lang oder länger eine Geschwindigkeit, zu der sein eigener Zähler weniger als die Hälfte der Impulse gibt.</translation>
  </message>
  <message>
   <source>For {value} of the time the car moves the {corner} wheel reads a speed of which its own counter gives less than half the pulses ({band}).</source>
   <translation>Während {value} der Zeit, in der das Fahrzeug rollt, zeigt das Rad {corner} eine Geschwindigkeit, zu der sein eigener Zähler weniger als die Hälfte der Impulse gibt ({band}).</translation>
  </message>
  <message>
   <source>Pulse counters of the wheels in the recording.</source>
   <translation>Impulszähler der Räder in der Aufzeichnung.</translation>
  </message>
  <message>
   <source>Speed without pulses</source>
   <translation>Geschwindigkeit ohne Impulse</translation>
  </message>
  <message>
   <source>never</source>
   <translation>nie</translation>
  </message>
  <message>
   <source>now and then</source>
   <translation>ab und zu</translation>
  </message>
  <message>
   <source>often</source>
   <translation>oft</translation>
  </message>
  <message>
   <source>two minutes or more above walking pace, such as the drive in which the complaint appears</source>
   <translation>zwei Minuten oder mehr über Schritttempo, etwa die Fahrt, in der die Beanstandung auftritt</translation>
  </message>
 </context>
 <context>
  <name>measurement.swap-gain</name>
  <message>
   <source>Fit of the curves with wheels exchanged</source>
   <translation>Passung der Kurven bei getauschten Rädern</translation>
  </message>
  <message>
   <source>Tight curves to both sides.</source>
   <translation>Enge Kurven nach beiden Seiten.</translation>
  </message>
  <message>
   <source>With wheels exchanged, the curves would fit {value} as well as they do as wired ({band}).</source>
   <translation>Mit getauschten Rädern würden die Kurven {value} so gut passen wie in der vorhandenen Verdrahtung ({band}).</translation>
  </message>
  <message>
   <source>better</source>
   <translation>besser</translation>
  </message>
  <message>
   <source>clearly better</source>
   <translation>deutlich besser</translation>
  </message>
  <message>
   <source>not better</source>
   <translation>nicht besser</translation>
  </message>
  <message>
   <source>tight curves to both sides, as at crossings in town</source>
   <translation>enge Kurven nach beiden Seiten, wie an Kreuzungen in der Stadt</translation>
  </message>
  <message>
   <source>worse</source>
   <translation>schlechter</translation>
  </message>
 </context>
 <context>
  <name>measurement.swap-pair</name>
  <message>
   <source>If wheels are exchanged, it is {band}.</source>
   <translation>Wenn Räder vertauscht sind, dann: {band}.</translation>
  </message>
  <message>
   <source>Tight curves to both sides, and a minute above 30 km/h recorded at 50 Hz or faster.</source>
   <translation>Enge Kurven nach beiden Seiten und eine Minute über 30 km/h, aufgezeichnet mit 50 Hz oder schneller.</translation>
  </message>
  <message>
   <source>Which wheels are exchanged</source>
   <translation>Welche Räder vertauscht sind</translation>
  </message>
  <message>
   <source>front left and front right</source>
   <translation>vorne links und vorne rechts</translation>
  </message>
  <message>
   <source>front left and rear left</source>
   <translation>vorne links und hinten links</translation>
  </message>
  <message>
   <source>front left and rear right</source>
   <translation>vorne links und hinten rechts</translation>
  </message>
  <message>
   <source>front right and rear left</source>
   <translation>vorne rechts und hinten links</translation>
  </message>
  <message>
   <source>front right and rear right</source>
   <translation>vorne rechts und hinten rechts</translation>
  </message>
  <message>
   <source>left and right of both axles</source>
   <translation>links und rechts an beiden Achsen</translation>
  </message>
  <message>
   <source>left and right of one axle</source>
   <translation>links und rechts einer Achse</translation>
  </message>
  <message>
   <source>rear left and rear right</source>
   <translation>hinten links und hinten rechts</translation>
  </message>
  <message>
   <source>the front and the rear axle</source>
   <translation>Vorder- und Hinterachse</translation>
  </message>
  <message>
   <source>tight curves to both sides</source>
   <translation>enge Kurven nach beiden Seiten</translation>
  </message>
 </context>
 <context>
  <name>measurement.swing-share</name>
  <message>
   <source>In {value} of its samples the {corner} wheel reads off for a moment, as often too fast as too slow ({band}).</source>
   <translation>Bei {value} seiner Messwerte weicht das Rad {corner} kurz ab, ebenso oft nach oben wie nach unten ({band}).</translation>
  </message>
  <message>
   <source>Samples off both ways</source>
   <translation>Messwerte nach beiden Seiten abweichend</translation>
  </message>
  <message>
   <source>Steady driving for a minute or more.</source>
   <translation>Gleichmäßige Fahrt, eine Minute oder mehr.</translation>
  </message>
  <message>
   <source>a few</source>
   <translation>einige</translation>
  </message>
  <message>
   <source>hardly any</source>
   <translation>kaum welche</translation>
  </message>
  <message>
   <source>many</source>
   <translation>viele</translation>
  </message>
  <message>
   <source>one minute or more at a steady 30 to 80 km/h on smooth road</source>
   <translation>eine Minute oder mehr mit gleichmäßigen 30 bis 80 km/h auf glatter Straße</translation>
  </message>
  <message>
   <source>some</source>
   <translation>etliche</translation>
  </message>
  <message>
   <source>very many</source>
   <translation>sehr viele</translation>
  </message>
 </context>
 <context>
  <name>measurement.turn-grain</name>
  <message>
   <source>Chance in what a turn loses</source>
   <translation>Zufall bei den Ausfällen je Umdrehung</translation>
  </message>
  <message>
   <source>Steady straight driving of 200 wheel turns or more while the fault is present, recorded at 50 Hz or faster.</source>
   <translation>Gleichmäßige Geradeausfahrt über 200 Radumdrehungen oder mehr, während der Fehler da ist, aufgezeichnet mit 50 Hz oder schneller.</translation>
  </message>
  <message>
   <source>Turn by turn, the losses of the {corner} wheel differ as if pieces of {value} of a turn were lost by chance ({band}).</source>
   <translation>Von Umdrehung zu Umdrehung unterscheiden sich die Ausfälle am Rad {corner}, als fielen Stücke von {value} einer Umdrehung zufällig aus ({band}).</translation>
  </message>
  <message>
   <source>every turn alike</source>
   <translation>jede Umdrehung gleich</translation>
  </message>
  <message>
   <source>far more in some turns</source>
   <translation>in manchen Umdrehungen weit mehr</translation>
  </message>
  <message>
   <source>nearly alike</source>
   <translation>fast gleich</translation>
  </message>
  <message>
   <source>pole by pole</source>
   <translation>Pol für Pol</translation>
  </message>
  <message>
   <source>several poles</source>
   <translation>mehrere Pole</translation>
  </message>
  <message>
   <source>small pieces</source>
   <translation>kleine Stücke</translation>
  </message>
  <message>
   <source>two minutes of steady straight driving at 25 to 40 km/h</source>
   <translation>zwei Minuten gleichmäßige Geradeausfahrt mit 25 bis 40 km/h</translation>
  </message>
 </context>
 <context>
  <name>measurement.turn-pulses-offset</name>
  <message>
   <source>A turn of the {corner} wheel differs by {value} pulses from a turn of the others ({band}).</source>
   <translation>Eine Umdrehung des Rades {corner} weicht um {value} Impulse von einer Umdrehung der anderen ab ({band}).</translation>
  </message>
  <message>
   <source>Pulse counters of the wheels in the recording, and a minute of steady straight driving at 30 to 80 km/h.</source>
   <translation>Impulszähler der Räder in der Aufzeichnung und eine Minute gleichmäßige Geradeausfahrt mit 30 bis 80 km/h.</translation>
  </message>
  <message>
   <source>Pulses of a turn</source>
   <translation>Impulse einer Umdrehung</translation>
  </message>
  <message>
   <source>equal</source>
   <translation>gleich</translation>
  </message>
  <message>
   <source>fewer</source>
   <translation>weniger</translation>
  </message>
  <message>
   <source>many fewer</source>
   <translation>viel weniger</translation>
  </message>
  <message>
   <source>more</source>
   <translation>mehr</translation>
  </message>
  <message>
   <source>two minutes of straight driving at a steady 30 to 80 km/h</source>
   <translation>zwei Minuten Geradeausfahrt mit gleichmäßigen 30 bis 80 km/h</translation>
  </message>
 </context>
 <context>
  <name>measurement.turn-sign</name>
  <message>
   <source>Left and right of the wheels agree with the turning of the car to {value}, where 100 % is right and -100 % is exchanged ({band}).</source>
   <translation>Links und rechts der Räder stimmen zu {value} mit der Drehung des Fahrzeugs überein; 100 % ist richtig, -100 % vertauscht ({band}).</translation>
  </message>
  <message>
   <source>Side to which the wheels turn</source>
   <translation>Seite, nach der die Räder drehen</translation>
  </message>
  <message>
   <source>Three or more curves, recorded with a yaw rate or steering angle whose positive side is stated, in steps fine enough to show the curves in the wheels.</source>
   <translation>Drei Kurven oder mehr, aufgezeichnet mit einer Gierrate oder einem Lenkwinkel mit angegebener positiver Seite, in Stufen, die fein genug sind, um die Kurven in den Rädern zu zeigen.</translation>
  </message>
  <message>
   <source>along</source>
   <translation>mit ihr</translation>
  </message>
  <message>
   <source>one axle the other way</source>
   <translation>eine Achse gegen sie</translation>
  </message>
  <message>
   <source>the other way</source>
   <translation>gegen sie</translation>
  </message>
  <message>
   <source>three or more curves to each side</source>
   <translation>drei Kurven oder mehr nach jeder Seite</translation>
  </message>
 </context>
 <context>
  <name>measurement.whole-turns</name>
  <message>
   <source>From one loss to the next the {corner} wheel makes whole turns: {value}, where 0 % is chance and 100 % always ({band}).</source>
   <translation>Von einem Ausfall zum nächsten macht das Rad {corner} ganze Umdrehungen: {value}; 0 % ist Zufall, 100 % immer ({band}).</translation>
  </message>
  <message>
   <source>Losses a whole number of turns apart</source>
   <translation>Ausfälle im Abstand ganzer Umdrehungen</translation>
  </message>
  <message>
   <source>Steady driving at 20 to 50 km/h, with ten losses or more, sixty where no wheel shows its revolution.</source>
   <translation>Gleichmäßige Fahrt mit 20 bis 50 km/h, mit zehn Ausfällen oder mehr; mit sechzig, wo kein Rad seine Umdrehung zeigt.</translation>
  </message>
  <message>
   <source>at random</source>
   <translation>zufällig</translation>
  </message>
  <message>
   <source>mostly whole turns</source>
   <translation>meist ganze Umdrehungen</translation>
  </message>
  <message>
   <source>some whole turns</source>
   <translation>einige ganze Umdrehungen</translation>
  </message>
  <message>
   <source>steady straight driving at 30 km/h for two minutes</source>
   <translation>zwei Minuten gleichmäßige Geradeausfahrt mit 30 km/h</translation>
  </message>
  <message>
   <source>whole turns</source>
   <translation>ganze Umdrehungen</translation>
  </message>
 </context>
 <context>
  <name>part.encoder</name>
  <message>
   <source>encoder ring</source>
   <translation>Encoderring</translation>
  </message>
 </context>
 <context>
  <name>part.fasteners</name>
  <message>
   <source>bolts and nut of the hub</source>
   <translation>Schrauben und Mutter der Nabe</translation>
  </message>
 </context>
 <context>
  <name>part.hub-unit</name>
  <message>
   <source>hub unit with encoder</source>
   <translation>Nabeneinheit mit Encoderring</translation>
  </message>
 </context>
 <context>
  <name>part.lead</name>
  <message>
   <source>piece of lead and connector</source>
   <translation>Stück Leitung und Stecker</translation>
  </message>
 </context>
 <context>
  <name>part.sensor</name>
  <message>
   <source>wheel speed sensor</source>
   <translation>Raddrehzahlsensor</translation>
  </message>
 </context>
 <context>
  <name>part.tyre</name>
  <message>
   <source>tyre</source>
   <translation>Reifen</translation>
  </message>
 </context>
 <context>
  <name>repair.change-tyre</name>
  <message>
   <source>Fit a tyre of the right size, or set its pressure</source>
   <translation>Reifen der richtigen Größe montieren oder den Druck einstellen</translation>
  </message>
 </context>
 <context>
  <name>repair.clean-encoder</name>
  <message>
   <source>Clean encoder and sensor tip</source>
   <translation>Encoderring und Sensorspitze reinigen</translation>
  </message>
 </context>
 <context>
  <name>repair.hand-back</name>
  <message>
   <source>Replace nothing; hand the car back with the record</source>
   <translation>Nichts ersetzen; das Fahrzeug mit der Aufzeichnung zurückgeben</translation>
  </message>
 </context>
 <context>
  <name>repair.mend-lead</name>
  <message>
   <source>Repair lead or connector</source>
   <translation>Leitung oder Stecker instand setzen</translation>
  </message>
 </context>
 <context>
  <name>repair.mend-supply</name>
  <message>
   <source>Mend supply, ground, bus or recorder</source>
   <translation>Versorgung, Masse, Bus oder Aufzeichnungsgerät instand setzen</translation>
  </message>
 </context>
 <context>
  <name>repair.replace-encoder</name>
  <message>
   <source>Replace the encoder ring alone</source>
   <translation>Nur den Encoderring ersetzen</translation>
  </message>
 </context>
 <context>
  <name>repair.replace-hub-unit</name>
  <message>
   <source>Replace the hub unit with its encoder</source>
   <translation>Nabeneinheit mit Encoderring ersetzen</translation>
  </message>
 </context>
 <context>
  <name>repair.replace-sensor</name>
  <message>
   <source>Replace the sensor</source>
   <translation>Sensor ersetzen</translation>
  </message>
 </context>
 <context>
  <name>repair.reseat-sensor</name>
  <message>
   <source>Clean the seat and fit the sensor flat</source>
   <translation>Sitz reinigen und den Sensor plan einbauen</translation>
  </message>
 </context>
 <context>
  <name>repair.sort-channels</name>
  <message>
   <source>Put the exchanged leads or channels right</source>
   <translation>Vertauschte Leitungen oder Kanäle richtig anschließen</translation>
  </message>
 </context>
 <context>
  <name>texts</name>
  <message>
   <source> (no corner was named: taken as the one the log ranks first)</source>
   <translation> (keine Radecke genannt: es gilt die, die nach der Aufzeichnung vorne liegt)</translation>
  </message>
  <message>
   <source> ({share} likely)</source>
   <translation> ({share} wahrscheinlich)</translation>
  </message>
  <message>
   <source> Parts: {parts}.</source>
   <translation> Teile: {parts}.</translation>
  </message>
  <message>
   <source> Then prove it by the road test that showed the fault.</source>
   <translation> Danach mit der Probefahrt nachweisen, die den Fehler gezeigt hat.</translation>
  </message>
  <message>
   <source> and {n} more</source>
   <translation> und {n} weitere</translation>
  </message>
  <message>
   <source> on {day}</source>
   <translation> am {day}</translation>
  </message>
  <message>
   <source> or </source>
   <translation> oder </translation>
  </message>
  <message>
   <source>, failure type {type}</source>
   <translation>, Fehlerart {type}</translation>
  </message>
  <message>
   <source>, half of them deeper than {depth} % of the speed</source>
   <translation>, die Hälfte davon tiefer als {depth} % der Geschwindigkeit</translation>
  </message>
  <message>
   <source>, in {unit}</source>
   <translation>, in {unit}</translation>
  </message>
  <message>
   <source>, or V across R ohm ({low} to {high})</source>
   <translation>, oder V an R ohm ({low} bis {high})</translation>
  </message>
  <message>
   <source>, then “limit” and the maker's figure</source>
   <translation>, dann „limit“ und der Wert des Herstellers</translation>
  </message>
  <message>
   <source>, {left} without</source>
   <translation>, {left} ohne Antwort</translation>
  </message>
  <message>
   <source>--map {corner}={name} fits several signals</source>
   <translation>--map {corner}={name} passt auf mehrere Signale</translation>
  </message>
  <message>
   <source>--map {corner}={name}: there is no such signal</source>
   <translation>--map {corner}={name}: es gibt kein solches Signal</translation>
  </message>
  <message>
   <source>... and {n} more</source>
   <translation>... und {n} weitere</translation>
  </message>
  <message>
   <source>1 answer</source>
   <translation>1 Antwort</translation>
  </message>
  <message>
   <source>1 car</source>
   <translation>1 Fahrzeug</translation>
  </message>
  <message>
   <source>1 dip</source>
   <translation>1 Einbruch</translation>
  </message>
  <message>
   <source>1 drop-out</source>
   <translation>1 Ausfall</translation>
  </message>
  <message>
   <source>1 earlier answer was read</source>
   <translation>1 frühere Antwort wurde gelesen</translation>
  </message>
  <message>
   <source>1 gap</source>
   <translation>1 Lücke</translation>
  </message>
  <message>
   <source>1 place</source>
   <translation>1 Stelle</translation>
  </message>
  <message>
   <source>1 quantity</source>
   <translation>1 Größe</translation>
  </message>
  <message>
   <source>1 silence</source>
   <translation>1 Verstummen</translation>
  </message>
  <message>
   <source>1 time</source>
   <translation>1 Mal</translation>
  </message>
  <message>
   <source>1 to {most} letters.</source>
   <translation>1 bis {most} Zeichen.</translation>
  </message>
  <message>
   <source>1 unit of money</source>
   <translation>1 Geldeinheit</translation>
  </message>
  <message>
   <source>1 while the brake is applied.</source>
   <translation>1, solange die Bremse betätigt ist.</translation>
  </message>
  <message>
   <source>; it looks as if {reason}</source>
   <translation>; es sieht so aus, als ob {reason}</translation>
  </message>
  <message>
   <source>; {count} of them are missing, so the rows behind those are too early</source>
   <translation>; {count} davon fehlen, daher liegen die Zeilen dahinter zu früh</translation>
  </message>
  <message>
   <source>A part is bought when something seen at its wheel bears it out: this look takes {minutes} min and costs {money}, “{repair}” {repair_money}.</source>
   <translation>Ein Teil wird gekauft, wenn ein Befund am Rad selbst dafür spricht: dieser Blick dauert {minutes} min und kostet {money}, „{repair}“ {repair_money}.</translation>
  </message>
  <message>
   <source>Acceleration of the car across the road; to the left is +.</source>
   <translation>Beschleunigung des Fahrzeugs quer zur Fahrt; nach links ist +.</translation>
  </message>
  <message>
   <source>Acceleration of the car along the road; forwards is +.</source>
   <translation>Beschleunigung des Fahrzeugs längs der Fahrt; vorwärts ist +.</translation>
  </message>
  <message>
   <source>Against it: {statement}</source>
   <translation>Dagegen: {statement}</translation>
  </message>
  <message>
   <source>All answers of this walk will be forgotten. Press “Start afresh” once more to do so.</source>
   <translation>Alle Antworten dieses Durchgangs gehen verloren. Dazu noch einmal „Neu beginnen“ drücken.</translation>
  </message>
  <message>
   <source>All gaps, s</source>
   <translation>Lücken gesamt, s</translation>
  </message>
  <message>
   <source>All together</source>
   <translation>Insgesamt</translation>
  </message>
  <message>
   <source>All wheels vanished or jumped at the same moment: the recorder, the bus or the unit.</source>
   <translation>Alle Räder verschwanden oder sprangen im selben Augenblick: Aufzeichnungsgerät, Bus oder Steuergerät.</translation>
  </message>
  <message>
   <source>An ordinary passenger car; nothing more was said about it.</source>
   <translation>Ein gewöhnlicher Pkw; mehr wurde nicht angegeben.</translation>
  </message>
  <message>
   <source>Angle of the steering as recorded; left is +.</source>
   <translation>Lenkwinkel wie aufgezeichnet; links ist +.</translation>
  </message>
  <message>
   <source>Answer</source>
   <translation>Antwort</translation>
  </message>
  <message>
   <source>Answer the question that is shown.</source>
   <translation>Die gezeigte Frage beantworten.</translation>
  </message>
  <message>
   <source>Answered before: {answer}. Nothing changes until another answer is given.</source>
   <translation>Schon beantwortet: {answer}. Es ändert sich nichts, bis eine andere Antwort gegeben wird.</translation>
  </message>
  <message>
   <source>Ask for the file once more, or make a new exercise.</source>
   <translation>Die Datei noch einmal anfordern oder eine neue Übung anlegen.</translation>
  </message>
  <message>
   <source>Bad sector {number}: at {place}°, up to {width}° wide. It shows in the mean of many turns; no single drop stands out there.</source>
   <translation>Schadhafter Sektor {number}: bei {place}°, bis zu {width}° breit. Er zeigt sich im Mittel vieler Umdrehungen; kein einzelner Einbruch sticht dort hervor.</translation>
  </message>
  <message>
   <source>Bad sector {number}: at {place}°, {width}° wide. In 100 turns {drops} drops begin there{depth}.</source>
   <translation>Schadhafter Sektor {number}: bei {place}°, {width}° breit. In 100 Umdrehungen beginnen dort {drops} Einbrüche{depth}.</translation>
  </message>
  <message>
   <source>Before that, a recording of a road test may tell more: walk once more with one.</source>
   <translation>Vorher sagt vielleicht eine aufgezeichnete Probefahrt mehr: noch einmal mit einer Aufzeichnung durchgehen.</translation>
  </message>
  <message>
   <source>Below its own lowest speed this wheel reads nothing; that is no drop-out.</source>
   <translation>Unterhalb seiner eigenen Mindestgeschwindigkeit zeigt dieses Rad nichts an; das ist kein Ausfall.</translation>
  </message>
  <message>
   <source>Best so far: {step}. Go back to change an answer.</source>
   <translation>Bisher am besten: {step}. Mit „Zurück“ lässt sich eine Antwort ändern.</translation>
  </message>
  <message>
   <source>Between the axles</source>
   <translation>Zwischen den Achsen</translation>
  </message>
  <message>
   <source>Between the wheels of an axle</source>
   <translation>Zwischen den Rädern einer Achse</translation>
  </message>
  <message>
   <source>Both curves are as recorded: by the delay of the control unit they come later than the bad sectors, which are freed of it.</source>
   <translation>Beide Kurven sind wie aufgezeichnet: um die Verzögerung des Steuergeräts liegen sie später als die schadhaften Sektoren, die davon befreit sind.</translation>
  </message>
  <message>
   <source>Brake</source>
   <translation>Bremse</translation>
  </message>
  <message>
   <source>Brier score {brier} (0 is best, 1 worst); log score {log} bits (0 is best)</source>
   <translation>Brier-Wert {brier} (0 ist am besten, 1 am schlechtesten); Log-Wert {log} bit (0 ist am besten)</translation>
  </message>
  <message>
   <source>Bringing the wheels to one clock</source>
   <translation>Räder auf eine gemeinsame Uhr bringen</translation>
  </message>
  <message>
   <source>CAN frames ({kind})</source>
   <translation>CAN-Botschaften ({kind})</translation>
  </message>
  <message>
   <source>Car speed</source>
   <translation>Fahrzeuggeschwindigkeit</translation>
  </message>
  <message>
   <source>Change only what the program got wrong: choose a signal, or type its name. What you leave as it is, is found as before.</source>
   <translation>Nur ändern, was das Programm falsch gelesen hat: ein Signal wählen oder seinen Namen eingeben. Was so bleibt, wird gefunden wie zuvor.</translation>
  </message>
  <message>
   <source>Check that the recording is whole.</source>
   <translation>Prüfen, ob die Aufzeichnung vollständig ist.</translation>
  </message>
  <message>
   <source>Check the path.</source>
   <translation>Den Pfad prüfen.</translation>
  </message>
  <message>
   <source>Check the rights of the file.</source>
   <translation>Die Rechte der Datei prüfen.</translation>
  </message>
  <message>
   <source>Choose a DBC, ARXML, KCD or SYM file, or have it exported again.</source>
   <translation>Eine DBC-, ARXML-, KCD- oder SYM-Datei wählen oder neu exportieren lassen.</translation>
  </message>
  <message>
   <source>Choose a DBC, ARXML, KCD or SYM file.</source>
   <translation>Eine DBC-, ARXML-, KCD- oder SYM-Datei wählen.</translation>
  </message>
  <message>
   <source>Choose a check that fits the sensors.</source>
   <translation>Eine Prüfung wählen, die zu den Sensoren passt.</translation>
  </message>
  <message>
   <source>Choose a file name.</source>
   <translation>Einen Dateinamen wählen.</translation>
  </message>
  <message>
   <source>Choose another file, or a name that is not taken for a new sheet.</source>
   <translation>Eine andere Datei wählen oder für eine neue Liste einen freien Namen.</translation>
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
   <source>Choose another place.</source>
   <translation>Einen anderen Ort wählen.</translation>
  </message>
  <message>
   <source>Choose another sample log.</source>
   <translation>Eine andere Beispielaufzeichnung wählen.</translation>
  </message>
  <message>
   <source>Choose another wheel or instrument.</source>
   <translation>Ein anderes Rad oder eine andere Auswertung wählen.</translation>
  </message>
  <message>
   <source>Choose one of the rule book.</source>
   <translation>Eine aus dem Regelwerk wählen.</translation>
  </message>
  <message>
   <source>Choose one of them, or name the parts of one drive one by one.</source>
   <translation>Eine davon wählen oder die Teile einer Fahrt einzeln nennen.</translation>
  </message>
  <message>
   <source>Choose one of {corners}.</source>
   <translation>Eine von {corners} wählen.</translation>
  </message>
  <message>
   <source>Choose other signals with --map, or record again.</source>
   <translation>Mit --map andere Signale wählen oder neu aufzeichnen.</translation>
  </message>
  <message>
   <source>Choose other signals with --map.</source>
   <translation>Mit --map andere Signale wählen.</translation>
  </message>
  <message>
   <source>Choose signals of one unit with --map, or state the unit with --unit.</source>
   <translation>Mit --map Signale einer Einheit wählen oder die Einheit mit --unit angeben.</translation>
  </message>
  <message>
   <source>Choose the recording itself. Known kinds: {known}.</source>
   <translation>Die Aufzeichnung selbst wählen. Bekannte Arten: {known}.</translation>
  </message>
  <message>
   <source>Choose the right database with --dbc FILE.</source>
   <translation>Mit --dbc FILE die richtige Datenbank wählen.</translation>
  </message>
  <message>
   <source>Choose the signal database (DBC) of this car.</source>
   <translation>Die Signaldatenbank (DBC) dieses Fahrzeugs wählen.</translation>
  </message>
  <message>
   <source>Choose the wheel first, or type {number}@RL (FL, FR, RL, RR); if nothing tells it: cannot say</source>
   <translation>Erst das Rad wählen oder {number}@RL eingeben (FL, FR, RL, RR); wenn nichts darauf hinweist: nicht zu sagen</translation>
  </message>
  <message>
   <source>Clearly less when loaded than when relieved.</source>
   <translation>Deutlich weniger bei Belastung als bei Entlastung.</translation>
  </message>
  <message>
   <source>Clearly more when loaded than when relieved.</source>
   <translation>Deutlich mehr bei Belastung als bei Entlastung.</translation>
  </message>
  <message>
   <source>Clock reset</source>
   <translation>Uhr neu gestartet</translation>
  </message>
  <message>
   <source>Clock strays</source>
   <translation>Zeitstempel abseits</translation>
  </message>
  <message>
   <source>Clock went back</source>
   <translation>Uhr lief rückwärts</translation>
  </message>
  <message>
   <source>Clocks differ</source>
   <translation>Uhren gehen verschieden</translation>
  </message>
  <message>
   <source>Close other programs, or open a shorter part of the recording.</source>
   <translation>Andere Programme schließen oder einen kürzeren Teil der Aufzeichnung öffnen.</translation>
  </message>
  <message>
   <source>Complaint and checks</source>
   <translation>Beanstandung und Prüfungen</translation>
  </message>
  <message>
   <source>Confirm the cautions first.</source>
   <translation>Zuerst die Vorsichtshinweise bestätigen.</translation>
  </message>
  <message>
   <source>Copy it again.</source>
   <translation>Neu kopieren.</translation>
  </message>
  <message>
   <source>Copy or export it again.</source>
   <translation>Neu kopieren oder exportieren.</translation>
  </message>
  <message>
   <source>Copy or export the recording again.</source>
   <translation>Die Aufzeichnung neu kopieren oder exportieren.</translation>
  </message>
  <message>
   <source>Copy the file again.</source>
   <translation>Die Datei neu kopieren.</translation>
  </message>
  <message>
   <source>Counted over the distance of the other wheels, for this one loses pulses and with them its angle.</source>
   <translation>Über den Weg der anderen Räder gezählt, weil dieses Rad Impulse und damit seinen Winkel verliert.</translation>
  </message>
  <message>
   <source>Counter doubtful</source>
   <translation>Zähler zweifelhaft</translation>
  </message>
  <message>
   <source>Counter reset</source>
   <translation>Zähler neu gestartet</translation>
  </message>
  <message>
   <source>Cut out the messages that are needed.</source>
   <translation>Die benötigten Botschaften ausschneiden.</translation>
  </message>
  <message>
   <source>Cut the recording in parts, and leave out columns that are no speeds.</source>
   <translation>Die Aufzeichnung in Teile schneiden und Spalten weglassen, die keine Geschwindigkeiten sind.</translation>
  </message>
  <message>
   <source>Cut the recording in parts.</source>
   <translation>Die Aufzeichnung in Teile schneiden.</translation>
  </message>
  <message>
   <source>Database conflict</source>
   <translation>Widerspruch in der Datenbank</translation>
  </message>
  <message>
   <source>Database repaired</source>
   <translation>Datenbank ausgebessert</translation>
  </message>
  <message>
   <source>Decimal comma</source>
   <translation>Dezimalkomma</translation>
  </message>
  <message>
   <source>Delete one of them.</source>
   <translation>Eine davon löschen.</translation>
  </message>
  <message>
   <source>Delete this answer.</source>
   <translation>Diese Antwort löschen.</translation>
  </message>
  <message>
   <source>Delete this file to start anew.</source>
   <translation>Diese Datei löschen, um neu zu beginnen.</translation>
  </message>
  <message>
   <source>Done</source>
   <translation>Fertig</translation>
  </message>
  <message>
   <source>Done with the recording</source>
   <translation>Mit der Aufzeichnung gemacht</translation>
  </message>
  <message>
   <source>Drawn as the {wheel} wheel is seen from outside the car; in forward driving it turns as the arrow says.</source>
   <translation>Gezeichnet, wie das Rad {wheel} von außerhalb des Fahrzeugs aussieht; bei Vorwärtsfahrt dreht es, wie der Pfeil zeigt.</translation>
  </message>
  <message>
   <source>Driven axle</source>
   <translation>Angetriebene Achse</translation>
  </message>
  <message>
   <source>Duplicate instants</source>
   <translation>Zeitpunkte doppelt</translation>
  </message>
  <message>
   <source>Excel table</source>
   <translation>Excel-Tabelle</translation>
  </message>
  <message>
   <source>Excel table, sheet {name}</source>
   <translation>Excel-Tabelle, Blatt {name}</translation>
  </message>
  <message>
   <source>Exercise</source>
   <translation>Übung</translation>
  </message>
  <message>
   <source>Exercise {number}</source>
   <translation>Übung {number}</translation>
  </message>
  <message>
   <source>Expected to settle {gain} of {doubt} bits of doubt in {minutes} min. {branches}.</source>
   <translation>Klärt voraussichtlich {gain} von {doubt} bit Zweifel in {minutes} min. {branches}.</translation>
  </message>
  <message>
   <source>Export it again from the program it was made with.</source>
   <translation>Noch einmal aus dem Programm exportieren, mit dem sie erstellt wurde.</translation>
  </message>
  <message>
   <source>Export it again.</source>
   <translation>Noch einmal exportieren.</translation>
  </message>
  <message>
   <source>Export it with a heading.</source>
   <translation>Mit Überschrift exportieren.</translation>
  </message>
  <message>
   <source>Export the data as hexadecimal bytes.</source>
   <translation>Die Daten als Hexadezimalbytes exportieren.</translation>
  </message>
  <message>
   <source>Export the recording again, one row a line.</source>
   <translation>Die Aufzeichnung neu exportieren, mit einem Messwertsatz je Zeile.</translation>
  </message>
  <message>
   <source>Export the recording again.</source>
   <translation>Die Aufzeichnung neu exportieren.</translation>
  </message>
  <message>
   <source>Export the time with more digits.</source>
   <translation>Die Zeit mit mehr Stellen ausgeben.</translation>
  </message>
  <message>
   <source>Files passed over</source>
   <translation>Dateien übergangen</translation>
  </message>
  <message>
   <source>Finding the ideal order</source>
   <translation>Günstigste Reihenfolge suchen</translation>
  </message>
  <message>
   <source>Five steady curves to each side at 40 to 60 km/h, as brisk as the road and the law allow.</source>
   <translation>Fünf gleichmäßig gefahrene Kurven nach jeder Seite mit 40 bis 60 km/h, so zügig, wie Straße und Vorschrift erlauben.</translation>
  </message>
  <message>
   <source>Following the angle of every wheel</source>
   <translation>Winkel jedes Rades verfolgen</translation>
  </message>
  <message>
   <source>Frames skipped</source>
   <translation>Botschaften übersprungen</translation>
  </message>
  <message>
   <source>Gaps</source>
   <translation>Lücken</translation>
  </message>
  <message>
   <source>Gaps in log</source>
   <translation>Lücken in der Aufzeichnung</translation>
  </message>
  <message>
   <source>Give it another number.</source>
   <translation>Eine andere Nummer vergeben.</translation>
  </message>
  <message>
   <source>Give it the texts {fields}, and nothing else.</source>
   <translation>Sie braucht die Texte {fields} und sonst nichts.</translation>
  </message>
  <message>
   <source>Give one answer for each check and corner.</source>
   <translation>Je Prüfung und Radecke eine Antwort geben.</translation>
  </message>
  <message>
   <source>Give the car to somebody with more means</source>
   <translation>Das Fahrzeug an eine besser ausgerüstete Stelle geben</translation>
  </message>
  <message>
   <source>Give the database of this car with --dbc FILE.</source>
   <translation>Die Datenbank dieses Fahrzeugs mit --dbc FILE angeben.</translation>
  </message>
  <message>
   <source>Give the files in it one by one.</source>
   <translation>Die Dateien darin einzeln angeben.</translation>
  </message>
  <message>
   <source>Go back to it to change the answer.</source>
   <translation>Zum Ändern dorthin zurückgehen.</translation>
  </message>
  <message>
   <source>Hand in an answer first.</source>
   <translation>Zuerst eine Antwort abgeben.</translation>
  </message>
  <message>
   <source>Have the database exported again, or mend the line of that signal.</source>
   <translation>Die Datenbank neu exportieren lassen oder die Zeile dieses Signals berichtigen.</translation>
  </message>
  <message>
   <source>Have the database exported again, or take that signal out.</source>
   <translation>Die Datenbank neu exportieren lassen oder dieses Signal herausnehmen.</translation>
  </message>
  <message>
   <source>Holes longer than two and a half usual steps and 40 ms.</source>
   <translation>Löcher, länger als zweieinhalb übliche Abstände und 40 ms.</translation>
  </message>
  <message>
   <source>Honest confidence</source>
   <translation>Ehrliche Sicherheit</translation>
  </message>
  <message>
   <source>How fast the car turns about its upright axis; left is +.</source>
   <translation>Wie schnell sich das Fahrzeug um die Hochachse dreht; links ist +.</translation>
  </message>
  <message>
   <source>How is this recording to be read?</source>
   <translation>Wie ist diese Aufzeichnung zu lesen?</translation>
  </message>
  <message>
   <source>How much the step from sample to sample scatters.</source>
   <translation>Wie sehr der Abstand von Messwert zu Messwert streut.</translation>
  </message>
  <message>
   <source>How often the signal is lost or briefly low, for the time spent so.</source>
   <translation>Wie oft das Signal ausfällt oder kurz zu niedrig ist, bezogen auf die so gefahrene Zeit.</translation>
  </message>
  <message>
   <source>In {file}: {told}</source>
   <translation>In {file}: {told}</translation>
  </message>
  <message>
   <source>Install the program again.</source>
   <translation>Das Programm neu installieren.</translation>
  </message>
  <message>
   <source>Invalid samples</source>
   <translation>Messwerte ungültig</translation>
  </message>
  <message>
   <source>Invalid, %</source>
   <translation>Ungültig, %</translation>
  </message>
  <message>
   <source>It must be a TOML text in UTF-8.</source>
   <translation>Es muss ein TOML-Text in UTF-8 sein.</translation>
  </message>
  <message>
   <source>It settles which electrical checks fit this car, and is asked once; next would be: {step}.</source>
   <translation>Davon hängt ab, welche elektrischen Prüfungen zu diesem Fahrzeug passen; es wird einmal gefragt. Als Nächstes käme: {step}.</translation>
  </message>
  <message>
   <source>It takes {minutes} min, costs {money} and brings the expected cost of the whole work, to a proven repair, to {expected}; without it {act_now}, beginning with “{repair}{place}”.</source>
   <translation>Dauert {minutes} min, kostet {money} und senkt die erwarteten Kosten der ganzen Arbeit, bis zur nachgewiesenen Reparatur, auf {expected}; ohne diese Prüfung {act_now}, beginnend mit „{repair}{place}“.</translation>
  </message>
  <message>
   <source>Its fields are {known}; number, group and cause must be there.</source>
   <translation>Seine Felder sind {known}; number, group und cause müssen vorhanden sein.</translation>
  </message>
  <message>
   <source>Its outcomes: {names}.</source>
   <translation>Ihre Ergebnisse: {names}.</translation>
  </message>
  <message>
   <source>Its outcomes: {outcomes}.</source>
   <translation>Ihre Ergebnisse: {outcomes}.</translation>
  </message>
  <message>
   <source>Jitter, ms</source>
   <translation>Schwankung, ms</translation>
  </message>
  <message>
   <source>Keep what it really was as experience of the workshop: wheel-triage experience add.</source>
   <translation>Was es wirklich war, als Erfahrung der Werkstatt behalten: wheel-triage experience add.</translation>
  </message>
  <message>
   <source>Known causes: {causes}.</source>
   <translation>Bekannte Ursachen: {causes}.</translation>
  </message>
  <message>
   <source>Known checks: {checks}.</source>
   <translation>Bekannte Prüfungen: {checks}.</translation>
  </message>
  <message>
   <source>Known fields: {known}.</source>
   <translation>Bekannte Felder: {known}.</translation>
  </message>
  <message>
   <source>Known units: {known}.</source>
   <translation>Bekannte Einheiten: {known}.</translation>
  </message>
  <message>
   <source>Known: {known}.</source>
   <translation>Bekannt: {known}.</translation>
  </message>
  <message>
   <source>Leave out --sheet.</source>
   <translation>--sheet weglassen.</translation>
  </message>
  <message>
   <source>Leave out the corner, or look which list the maker follows.</source>
   <translation>Die Radecke weglassen oder nachsehen, nach welcher Liste der Hersteller geht.</translation>
  </message>
  <message>
   <source>Lengthwise</source>
   <translation>Längs</translation>
  </message>
  <message>
   <source>Loaded and relieved cannot be compared.</source>
   <translation>Belastet und entlastet lassen sich nicht vergleichen.</translation>
  </message>
  <message>
   <source>Log incomplete</source>
   <translation>Aufzeichnung unvollständig</translation>
  </message>
  <message>
   <source>Longest gap, s</source>
   <translation>Längste Lücke, s</translation>
  </message>
  <message>
   <source>Looking for losses</source>
   <translation>Ausfälle suchen</translation>
  </message>
  <message>
   <source>Losses</source>
   <translation>Ausfälle</translation>
  </message>
  <message>
   <source>Low rate</source>
   <translation>Zu selten aufgezeichnet</translation>
  </message>
  <message>
   <source>MDF signals</source>
   <translation>MDF-Signale</translation>
  </message>
  <message>
   <source>Make the folder or choose another.</source>
   <translation>Den Ordner anlegen oder einen anderen wählen.</translation>
  </message>
  <message>
   <source>Make the folder, or choose another.</source>
   <translation>Den Ordner anlegen oder einen anderen wählen.</translation>
  </message>
  <message>
   <source>Mapping guessed</source>
   <translation>Zuordnung vermutet</translation>
  </message>
  <message>
   <source>Mapping remembered</source>
   <translation>Zuordnung gemerkt</translation>
  </message>
  <message>
   <source>Mapping the ring of every wheel</source>
   <translation>Ringbild jedes Rades erstellen</translation>
  </message>
  <message>
   <source>Measuring every wheel</source>
   <translation>Jedes Rad messen</translation>
  </message>
  <message>
   <source>Mend it, or move it away to start afresh.</source>
   <translation>Berichtigen oder zum Neubeginn verschieben.</translation>
  </message>
  <message>
   <source>Mend its place or delete it.</source>
   <translation>Die Stelle berichtigen oder löschen.</translation>
  </message>
  <message>
   <source>Mend or delete this file, or leave it aside with --no-memory.</source>
   <translation>Diese Datei berichtigen oder löschen, oder mit --no-memory beiseitelassen.</translation>
  </message>
  <message>
   <source>Mend the value.</source>
   <translation>Den Wert berichtigen.</translation>
  </message>
  <message>
   <source>Message on two buses</source>
   <translation>Botschaft auf zwei Bussen</translation>
  </message>
  <message>
   <source>Most probable: {claim}, {share}</source>
   <translation>Am wahrscheinlichsten: {claim}, {share}</translation>
  </message>
  <message>
   <source>Move this file away.</source>
   <translation>Diese Datei verschieben.</translation>
  </message>
  <message>
   <source>Name a DBC, ARXML, KCD or SYM file.</source>
   <translation>Eine DBC-, ARXML-, KCD- oder SYM-Datei nennen.</translation>
  </message>
  <message>
   <source>Name a TOML file.</source>
   <translation>Eine TOML-Datei nennen.</translation>
  </message>
  <message>
   <source>Name a file for the answers.</source>
   <translation>Eine Datei für die Antworten nennen.</translation>
  </message>
  <message>
   <source>Name a file in another folder.</source>
   <translation>Eine Datei in einem anderen Ordner nennen.</translation>
  </message>
  <message>
   <source>Name a recording.</source>
   <translation>Eine Aufzeichnung nennen.</translation>
  </message>
  <message>
   <source>Name another --file.</source>
   <translation>Mit --file eine andere nennen.</translation>
  </message>
  <message>
   <source>Name another column with --map.</source>
   <translation>Mit --map eine andere Spalte nennen.</translation>
  </message>
  <message>
   <source>Name another file with --answers.</source>
   <translation>Mit --answers eine andere Datei nennen.</translation>
  </message>
  <message>
   <source>Name every part once.</source>
   <translation>Jeden Teil einmal nennen.</translation>
  </message>
  <message>
   <source>Name it, such as --group vans.</source>
   <translation>Benennen, etwa --group vans.</translation>
  </message>
  <message>
   <source>Name one of these with --sheet.</source>
   <translation>Eines davon mit --sheet nennen.</translation>
  </message>
  <message>
   <source>Name one that wheel-triage walk wrote.</source>
   <translation>Eine nennen, die wheel-triage walk geschrieben hat.</translation>
  </message>
  <message>
   <source>Name the column of time 'time_s' (or 'timestamp_ms' and so on).</source>
   <translation>Die Zeitspalte „time_s“ nennen (oder „timestamp_ms“ und so weiter).</translation>
  </message>
  <message>
   <source>Name the parts of one drive.</source>
   <translation>Die Teile einer Fahrt nennen.</translation>
  </message>
  <message>
   <source>Name the recording, or another folder.</source>
   <translation>Die Aufzeichnung oder einen anderen Ordner nennen.</translation>
  </message>
  <message>
   <source>Name the recordings in it one by one.</source>
   <translation>Die Aufzeichnungen darin einzeln nennen.</translation>
  </message>
  <message>
   <source>Name the unit in the heading, such as FL_edge_us.</source>
   <translation>Die Einheit in der Überschrift nennen, etwa FL_edge_us.</translation>
  </message>
  <message>
   <source>Name the wheels with --map FL=NAME --map FR=NAME --map RL=NAME --map RR=NAME.</source>
   <translation>Die Räder mit --map FL=NAME --map FR=NAME --map RL=NAME --map RR=NAME nennen.</translation>
  </message>
  <message>
   <source>Name the wheels with --map FL=NAME and so on, or give the files of all four wheels.</source>
   <translation>Die Räder mit --map FL=NAME und so weiter nennen oder die Dateien aller vier Räder angeben.</translation>
  </message>
  <message>
   <source>Next checks</source>
   <translation>Nächste Prüfungen</translation>
  </message>
  <message>
   <source>Next step: {step}</source>
   <translation>Nächster Schritt: {step}</translation>
  </message>
  <message>
   <source>No bad sector: only {n} short losses and deviations, too few for a pattern.</source>
   <translation>Kein schadhafter Sektor: nur {n} kurze Ausfälle und Abweichungen, zu wenige für ein Muster.</translation>
  </message>
  <message>
   <source>No bad sector: the drops do not keep to an angle.</source>
   <translation>Kein schadhafter Sektor: die Einbrüche halten sich an keinen Winkel.</translation>
  </message>
  <message>
   <source>No car of this kind has been counted yet; verdicts rest on the rule book alone.</source>
   <translation>Noch kein Fahrzeug dieser Art gezählt; Ergebnisse beruhen allein auf dem Regelwerk.</translation>
  </message>
  <message>
   <source>No car yet</source>
   <translation>Noch kein Fahrzeug</translation>
  </message>
  <message>
   <source>No check is expected to save more than it costs; the whole work, to a proven repair, is expected to cost {act_now}.</source>
   <translation>Keine Prüfung spart voraussichtlich mehr, als sie kostet; die ganze Arbeit, bis zur nachgewiesenen Reparatur, kostet voraussichtlich {act_now}.</translation>
  </message>
  <message>
   <source>No clear difference between loaded and relieved.</source>
   <translation>Kein deutlicher Unterschied zwischen belastet und entlastet.</translation>
  </message>
  <message>
   <source>No corner stands out</source>
   <translation>Keine Radecke sticht hervor</translation>
  </message>
  <message>
   <source>No drop-out of the {wheel} wheel</source>
   <translation>Kein Ausfall am Rad {wheel}</translation>
  </message>
  <message>
   <source>No further check in the rule book would change this verdict.</source>
   <translation>Keine weitere Prüfung des Regelwerks würde dieses Urteil ändern.</translation>
  </message>
  <message>
   <source>No motion</source>
   <translation>Keine Bewegung</translation>
  </message>
  <message>
   <source>No wheel end is suspected</source>
   <translation>Kein Rad ist verdächtig</translation>
  </message>
  <message>
   <source>No wheel is given up unseen: this look takes {minutes} min, costs {money} and is expected to settle {gain} bit of the doubt.</source>
   <translation>Kein Rad wird ungesehen aufgegeben: dieser Blick dauert {minutes} min, kostet {money} und klärt voraussichtlich {gain} bit des Zweifels.</translation>
  </message>
  <message>
   <source>Noise</source>
   <translation>Rauschen</translation>
  </message>
  <message>
   <source>Not decided yet: this recording alone cannot tell</source>
   <translation>Noch nicht entschieden: diese Aufzeichnung allein reicht nicht</translation>
  </message>
  <message>
   <source>Not measurable: {measurements}. {reason} Would help: {driving}</source>
   <translation>Nicht messbar: {measurements}. {reason} Helfen würde: {driving}</translation>
  </message>
  <message>
   <source>Not shown</source>
   <translation>Nicht messbar</translation>
  </message>
  <message>
   <source>Not there any more: {file}</source>
   <translation>Nicht mehr da: {file}</translation>
  </message>
  <message>
   <source>Nothing else that is known does.</source>
   <translation>Sonst spricht nichts Bekanntes dagegen.</translation>
  </message>
  <message>
   <source>Nothing had to be changed.</source>
   <translation>Nichts musste geändert werden.</translation>
  </message>
  <message>
   <source>Nothing unusual.</source>
   <translation>Nichts Auffälliges.</translation>
  </message>
  <message>
   <source>Nothing was recorded of any wheel: the recorder's, no wheel's fault.</source>
   <translation>Von keinem Rad wurde etwas aufgezeichnet: das liegt am Aufzeichnungsgerät, an keinem Rad.</translation>
  </message>
  <message>
   <source>Noticed while reading</source>
   <translation>Beim Lesen aufgefallen</translation>
  </message>
  <message>
   <source>Off: {cars} of “{group}” are kept and change no verdict.</source>
   <translation>Aus: {cars} der Art „{group}“ gemerkt, ohne Einfluss auf Ergebnisse.</translation>
  </message>
  <message>
   <source>On: {cars} of “{group}” count in verdicts.</source>
   <translation>Ein: {cars} der Art „{group}“ zählen in Ergebnissen mit.</translation>
  </message>
  <message>
   <source>Once a turn the speed swings by {amplitude}; a turn is {length} m, {n} turns used.</source>
   <translation>Einmal je Umdrehung schwankt die Drehzahl um {amplitude}; eine Umdrehung ist {length} m, {n} Umdrehungen ausgewertet.</translation>
  </message>
  <message>
   <source>One of {answers}.</source>
   <translation>Möglich ist: {answers}.</translation>
  </message>
  <message>
   <source>One turn is {length} m, {source}; {n} samples.</source>
   <translation>Eine Umdrehung ist {length} m, {source}; {n} Messwerte.</translation>
  </message>
  <message>
   <source>Only this wheel read less than half of what it must have turned, or nothing.</source>
   <translation>Nur dieses Rad zeigte weniger als die Hälfte dessen, was es gedreht haben muss, oder nichts.</translation>
  </message>
  <message>
   <source>Open a recording first.</source>
   <translation>Zuerst eine Aufzeichnung öffnen.</translation>
  </message>
  <message>
   <source>Open it in a spreadsheet program and save it, or export it as CSV.</source>
   <translation>In einem Tabellenprogramm öffnen und speichern oder als CSV exportieren.</translation>
  </message>
  <message>
   <source>Parquet table</source>
   <translation>Parquet-Tabelle</translation>
  </message>
  <message>
   <source>Part of the ripple that repeats with the turn: run-out, tilt of the hub.</source>
   <translation>Teil der Welligkeit, der sich mit der Umdrehung wiederholt: Rundlauf, Kippen der Nabe.</translation>
  </message>
  <message>
   <source>Press Enter, or s to skip the step</source>
   <translation>Die Eingabetaste drücken, oder s, um den Schritt auszulassen</translation>
  </message>
  <message>
   <source>Pulses in one turn</source>
   <translation>Impulse je Umdrehung</translation>
  </message>
  <message>
   <source>Put a first line with the column names above the numbers.</source>
   <translation>Über die Zahlen eine erste Zeile mit den Spaltennamen setzen.</translation>
  </message>
  <message>
   <source>Put the column names above the numbers, and nothing else beside them.</source>
   <translation>Die Spaltennamen über die Zahlen setzen und nichts anderes daneben.</translation>
  </message>
  <message>
   <source>Ranking the causes</source>
   <translation>Ursachen ordnen</translation>
  </message>
  <message>
   <source>Rate, Hz</source>
   <translation>Rate, Hz</translation>
  </message>
  <message>
   <source>Record again with time stamps, or choose another file.</source>
   <translation>Noch einmal mit Zeitstempeln aufzeichnen oder eine andere Datei wählen.</translation>
  </message>
  <message>
   <source>Record longer.</source>
   <translation>Länger aufzeichnen.</translation>
  </message>
  <message>
   <source>Record or copy the log again.</source>
   <translation>Noch einmal aufzeichnen oder die Aufzeichnung neu kopieren.</translation>
  </message>
  <message>
   <source>Road test</source>
   <translation>Probefahrt</translation>
  </message>
  <message>
   <source>Rolling circumference</source>
   <translation>Abrollumfang</translation>
  </message>
  <message>
   <source>Samples</source>
   <translation>Messwerte</translation>
  </message>
  <message>
   <source>Samples a second, by the usual step. Below 20 Hz the ring map reaches only slow driving.</source>
   <translation>Messwerte je Sekunde, nach dem üblichen Abstand. Unter 20 Hz reicht das Ringbild nur für langsame Fahrt.</translation>
  </message>
  <message>
   <source>Samples in the recording.</source>
   <translation>Messwerte in der Aufzeichnung.</translation>
  </message>
  <message>
   <source>Save it again as .xlsx or .csv.</source>
   <translation>Noch einmal als .xlsx oder .csv speichern.</translation>
  </message>
  <message>
   <source>Save it again, without a password.</source>
   <translation>Noch einmal ohne Kennwort speichern.</translation>
  </message>
  <message>
   <source>Save it as CSV.</source>
   <translation>Als CSV speichern.</translation>
  </message>
  <message>
   <source>Save the log to a file first.</source>
   <translation>Die Aufzeichnung zuerst in einer Datei speichern.</translation>
  </message>
  <message>
   <source>Save the table as .xlsx or .csv without a password.</source>
   <translation>Die Tabelle ohne Kennwort als .xlsx oder .csv speichern.</translation>
  </message>
  <message>
   <source>Save the table as CSV.</source>
   <translation>Die Tabelle als CSV speichern.</translation>
  </message>
  <message>
   <source>Say below which signal belongs to which wheel.</source>
   <translation>Unten angeben, welches Signal zu welchem Rad gehört.</translation>
  </message>
  <message>
   <source>See in the maker's list which code is the left front wheel's, then write '{code} in LIST' (lists: {lists}), or wheel and kind: {answer}.</source>
   <translation>In der Liste des Herstellers nachsehen, welcher Code zum Rad vorne links gehört, dann „{code} in LISTE“ schreiben (Listen: {lists}), oder Rad und Art: {answer}.</translation>
  </message>
  <message>
   <source>See wheel-triage experience list.</source>
   <translation>Siehe wheel-triage experience list.</translation>
  </message>
  <message>
   <source>Sensors of this car: {kind}.</source>
   <translation>Sensoren dieses Fahrzeugs: {kind}.</translation>
  </message>
  <message>
   <source>Shaded: where the true value lies with about 95 % confidence.</source>
   <translation>Schattiert: hier liegt der wahre Wert mit etwa 95 % Sicherheit.</translation>
  </message>
  <message>
   <source>Share of samples marked as not available; they are left out, never taken for 0.</source>
   <translation>Anteil der als nicht verfügbar markierten Messwerte; sie werden weggelassen, nie als 0 genommen.</translation>
  </message>
  <message>
   <source>Shorten it.</source>
   <translation>Kürzen.</translation>
  </message>
  <message>
   <source>Sideways</source>
   <translation>Quer</translation>
  </message>
  <message>
   <source>Sign doubtful</source>
   <translation>Vorzeichen zweifelhaft</translation>
  </message>
  <message>
   <source>Smallest step of the recorded numbers; ripple smaller than this is hidden.</source>
   <translation>Kleinste Stufe der aufgezeichneten Zahlen; kleinere Welligkeit ist nicht zu sehen.</translation>
  </message>
  <message>
   <source>Speed of the car as the control unit gives it.</source>
   <translation>Geschwindigkeit des Fahrzeugs, wie das Steuergerät sie angibt.</translation>
  </message>
  <message>
   <source>Spent so far: {minutes} min; time and parts: {money} (an hour of work counts {hour} of them)</source>
   <translation>Bisher aufgewendet: {minutes} min; Zeit und Teile: {money} (eine Arbeitsstunde zählt {hour} davon)</translation>
  </message>
  <message>
   <source>Start the exercise anew.</source>
   <translation>Die Übung neu beginnen.</translation>
  </message>
  <message>
   <source>Starting</source>
   <translation>Beginn</translation>
  </message>
  <message>
   <source>State below the rolling radius of the tyres.</source>
   <translation>Unten den Abrollradius der Reifen angeben.</translation>
  </message>
  <message>
   <source>State below the unit of the wheel speeds.</source>
   <translation>Unten die Einheit der Radgeschwindigkeiten angeben.</translation>
  </message>
  <message>
   <source>State pulses_per_rev in a vehicle file and give it with --vehicle.</source>
   <translation>pulses_per_rev in einer Fahrzeugdatei angeben und mit --vehicle nennen.</translation>
  </message>
  <message>
   <source>State the rolling radius in metres with --tyre-radius, for example --tyre-radius 0.312.</source>
   <translation>Den Abrollradius in Metern mit --tyre-radius angeben, zum Beispiel --tyre-radius 0.312.</translation>
  </message>
  <message>
   <source>State wheel, cause and confidence first.</source>
   <translation>Zuerst Rad, Ursache und Sicherheit angeben.</translation>
  </message>
  <message>
   <source>State {value} to {value2} %.</source>
   <translation>{value} bis {value2} % angeben.</translation>
  </message>
  <message>
   <source>Steering</source>
   <translation>Lenkung</translation>
  </message>
  <message>
   <source>Step, km/h</source>
   <translation>Stufe, km/h</translation>
  </message>
  <message>
   <source>Stuck channel</source>
   <translation>Kanal steht fest</translation>
  </message>
  <message>
   <source>Suspected: {corner} {wheel}, {share}</source>
   <translation>Verdächtig: {corner} {wheel}, {share}</translation>
  </message>
  <message>
   <source>Suspected: {wheel} ({share})</source>
   <translation>Verdächtig: {wheel} ({share})</translation>
  </message>
  <message>
   <source>Swing once a turn</source>
   <translation>Schwankung je Umdrehung</translation>
  </message>
  <message>
   <source>Take wheel and kind from the maker's list: {answer}.</source>
   <translation>Rad und Art aus der Liste des Herstellers nehmen: {answer}.</translation>
  </message>
  <message>
   <source>Take {known}.</source>
   <translation>Möglich: {known}.</translation>
  </message>
  <message>
   <source>Take {low} to {high}.</source>
   <translation>{low} bis {high} nehmen.</translation>
  </message>
  <message>
   <source>Taken for the car</source>
   <translation>Als Fahrzeug angenommen</translation>
  </message>
  <message>
   <source>The answers could not be saved</source>
   <translation>Die Antworten konnten nicht gespeichert werden</translation>
  </message>
  <message>
   <source>The car is right</source>
   <translation>Das Fahrzeug ist in Ordnung</translation>
  </message>
  <message>
   <source>The car of the exercise</source>
   <translation>Das Fahrzeug der Übung</translation>
  </message>
  <message>
   <source>The causes: {causes}.</source>
   <translation>Die Ursachen: {causes}.</translation>
  </message>
  <message>
   <source>The corners are {corners}.</source>
   <translation>Die Radecken sind {corners}.</translation>
  </message>
  <message>
   <source>The driver is asked before anything is opened: it takes {minutes} min, costs {money} and is expected to settle {gain} bit of the doubt.</source>
   <translation>Der Fahrer wird gefragt, bevor etwas geöffnet wird: das dauert {minutes} min, kostet {money} und klärt voraussichtlich {gain} bit des Zweifels.</translation>
  </message>
  <message>
   <source>The fields are schema, on, prior_cars, last_number and [[outcome]].</source>
   <translation>Die Felder sind schema, on, prior_cars, last_number und [[outcome]].</translation>
  </message>
  <message>
   <source>The groups: {known}.</source>
   <translation>Die Gruppen: {known}.</translation>
  </message>
  <message>
   <source>The kinds are check and repair; the places FL, FR, RL, RR and vehicle.</source>
   <translation>Die Arten sind check und repair; die Orte FL, FR, RL, RR und vehicle.</translation>
  </message>
  <message>
   <source>The length of a turn is not known, so the axis counts cycles per metre.</source>
   <translation>Die Länge einer Umdrehung ist nicht bekannt, daher zählt die Achse Perioden je Meter.</translation>
  </message>
  <message>
   <source>The list of recordings could not be kept</source>
   <translation>Die Liste der Aufzeichnungen konnte nicht behalten werden</translation>
  </message>
  <message>
   <source>The list of recordings was left aside</source>
   <translation>Die Liste der Aufzeichnungen wurde beiseitegelassen</translation>
  </message>
  <message>
   <source>The log could not show {quantities} on any wheel; the verdict rests on the rest.</source>
   <translation>Die Aufzeichnung konnte {quantities} an keinem Rad zeigen; das Ergebnis beruht auf dem Übrigen.</translation>
  </message>
  <message>
   <source>The longest hole between two samples.</source>
   <translation>Das längste Loch zwischen zwei Messwerten.</translation>
  </message>
  <message>
   <source>The memory of this computer is not enough for this recording.</source>
   <translation>Der Arbeitsspeicher dieses Rechners reicht für diese Aufzeichnung nicht.</translation>
  </message>
  <message>
   <source>The program, from the recording alone: {claim}, {share}.</source>
   <translation>Das Programm, allein nach der Aufzeichnung: {claim}, {share}.</translation>
  </message>
  <message>
   <source>The repair was put off; this check takes {minutes} min and is expected to settle {gain} bit of doubt.</source>
   <translation>Die Reparatur wurde zurückgestellt; diese Prüfung dauert {minutes} min und klärt voraussichtlich {gain} bit Zweifel.</translation>
  </message>
  <message>
   <source>The repairs before it were put off; this takes {minutes} min ({money}).</source>
   <translation>Die Reparaturen davor wurden zurückgestellt; diese dauert {minutes} min ({money}).</translation>
  </message>
  <message>
   <source>The rule book cannot be used</source>
   <translation>Das Regelwerk ist nicht verwendbar</translation>
  </message>
  <message>
   <source>The rule book's own figures weigh as much as {cars} cars.</source>
   <translation>Die eigenen Zahlen des Regelwerks wiegen so viel wie {cars} Fahrzeuge.</translation>
  </message>
  <message>
   <source>The same value was repeated while the car changed speed or the road stirred the other wheels.</source>
   <translation>Derselbe Wert wiederholte sich, während das Fahrzeug die Geschwindigkeit änderte oder die Straße die anderen Räder unruhig machte.</translation>
  </message>
  <message>
   <source>The settings could not be kept</source>
   <translation>Die Einstellungen konnten nicht behalten werden</translation>
  </message>
  <message>
   <source>The settings were left aside. {error}</source>
   <translation>Die Einstellungen wurden beiseitegelassen. {error}</translation>
  </message>
  <message>
   <source>The signal was gone while that of another wheel was gone too.</source>
   <translation>Das Signal fehlte, während auch das eines anderen Rades fehlte.</translation>
  </message>
  <message>
   <source>The stored codes are read before hands get dirty, once for all wheels: it takes {minutes} min, costs {money} and is expected to settle {gain} bit of the doubt or more.</source>
   <translation>Der Fehlerspeicher wird gelesen, bevor die Hände schmutzig werden, einmal für alle Räder: das dauert {minutes} min, kostet {money} und klärt voraussichtlich {gain} bit des Zweifels oder mehr.</translation>
  </message>
  <message>
   <source>The turn of {length} m is that of the other wheels.</source>
   <translation>Die Umdrehung von {length} m ist die der anderen Räder.</translation>
  </message>
  <message>
   <source>The verdict takes in: {findings}.</source>
   <translation>In das Ergebnis gehen ein: {findings}.</translation>
  </message>
  <message>
   <source>The wheel briefly read less than it can have turned: pulses were missing.</source>
   <translation>Das Rad zeigte kurz weniger, als es gedreht haben kann: Impulse fehlten.</translation>
  </message>
  <message>
   <source>The wheels are {wheels}</source>
   <translation>Die Räder sind {wheels}</translation>
  </message>
  <message>
   <source>The {wheel} wheel is the outer, loaded one in {loading} curves and the inner one in {relieving} curves. Driven so: {outer} and {inner}; straight on: {straight}.</source>
   <translation>Das Rad {wheel} ist in {loading}kurven das äußere, belastete und in {relieving}kurven das innere. So gefahren: {outer} und {inner}; geradeaus: {straight}.</translation>
  </message>
  <message>
   <source>There is no setting “{name}”.</source>
   <translation>Es gibt keine Einstellung „{name}“.</translation>
  </message>
  <message>
   <source>There is nothing left to ask</source>
   <translation>Es ist nichts mehr zu fragen</translation>
  </message>
  <message>
   <source>This is a defect of the program, not of your file. Please report it with this text.</source>
   <translation>Das ist ein Fehler des Programms, nicht Ihrer Datei. Bitte melden Sie ihn mit diesem Text.</translation>
  </message>
  <message>
   <source>This recording cannot be used</source>
   <translation>Diese Aufzeichnung ist nicht verwendbar</translation>
  </message>
  <message>
   <source>This recording cannot be used yet</source>
   <translation>Diese Aufzeichnung ist noch nicht verwendbar</translation>
  </message>
  <message>
   <source>This recording could not be judged</source>
   <translation>Diese Aufzeichnung konnte nicht beurteilt werden</translation>
  </message>
  <message>
   <source>This wheel does not show its turn: {reason}.</source>
   <translation>Dieses Rad zeigt seine Umdrehung nicht: {reason}.</translation>
  </message>
  <message>
   <source>Time and parts</source>
   <translation>Zeit und Teile</translation>
  </message>
  <message>
   <source>Time in all holes together.</source>
   <translation>Zeit in allen Löchern zusammen.</translation>
  </message>
  <message>
   <source>Time to act: {repair}{place}.{parts}{proof} Is the car right?</source>
   <translation>Jetzt handeln: {repair}{place}.{parts}{proof} Ist das Fahrzeug in Ordnung?</translation>
  </message>
  <message>
   <source>Too short</source>
   <translation>Zu kurz</translation>
  </message>
  <message>
   <source>Try again in a moment.</source>
   <translation>Gleich noch einmal versuchen.</translation>
  </message>
  <message>
   <source>Turn it on with wheel-triage experience on.</source>
   <translation>Mit wheel-triage experience on einschalten.</translation>
  </message>
  <message>
   <source>Type 1 to {most}, or s for not done</source>
   <translation>1 bis {most} eingeben, oder s für nicht gemacht</translation>
  </message>
  <message>
   <source>Unit</source>
   <translation>Einheit</translation>
  </message>
  <message>
   <source>Unit assumed</source>
   <translation>Einheit angenommen</translation>
  </message>
  <message>
   <source>Unit doubtful</source>
   <translation>Einheit zweifelhaft</translation>
  </message>
  <message>
   <source>Unit in which the recording gives the speed.</source>
   <translation>Einheit, in der die Aufzeichnung die Geschwindigkeit angibt.</translation>
  </message>
  <message>
   <source>Unpack it and choose the log in it.</source>
   <translation>Auspacken und die Aufzeichnung darin wählen.</translation>
  </message>
  <message>
   <source>Unpack it and choose the logs in it.</source>
   <translation>Auspacken und die Aufzeichnungen darin wählen.</translation>
  </message>
  <message>
   <source>Unpack it and choose the parts of one recording.</source>
   <translation>Auspacken und die Teile einer Aufzeichnung wählen.</translation>
  </message>
  <message>
   <source>Unpack it yourself and choose the log in it.</source>
   <translation>Selbst auspacken und die Aufzeichnung darin wählen.</translation>
  </message>
  <message>
   <source>Unpack it yourself and look at what it holds.</source>
   <translation>Selbst auspacken und ansehen, was darin ist.</translation>
  </message>
  <message>
   <source>Use 0 or a positive whole number.</source>
   <translation>0 oder eine positive ganze Zahl nehmen.</translation>
  </message>
  <message>
   <source>Use {pixels} or {lines}.</source>
   <translation>{pixels} oder {lines} verwenden.</translation>
  </message>
  <message>
   <source>Verdict</source>
   <translation>Ergebnis</translation>
  </message>
  <message>
   <source>Wait until the recorder has finished, or copy the file first.</source>
   <translation>Warten, bis das Aufzeichnungsgerät fertig ist, oder die Datei zuerst kopieren.</translation>
  </message>
  <message>
   <source>Wasted</source>
   <translation>Vergeudet</translation>
  </message>
  <message>
   <source>What is cleaned cannot be looked at any more: this look takes {minutes} min and costs {money}, “{repair}” {repair_money}.</source>
   <translation>Was gereinigt ist, lässt sich nicht mehr ansehen: dieser Blick dauert {minutes} min und kostet {money}, „{repair}“ {repair_money}.</translation>
  </message>
  <message>
   <source>What is known leaves no doubt worth a check. “{step}” comes first all the same. {why}</source>
   <translation>Was bekannt ist, lässt keinen Zweifel, der eine Prüfung lohnt. „{step}“ kommt trotzdem zuerst. {why}</translation>
  </message>
  <message>
   <source>What is left of the ripple when swing and slow course are taken out.</source>
   <translation>Was von der Welligkeit bleibt, wenn Schwankung und langsamer Verlauf abgezogen sind.</translation>
  </message>
  <message>
   <source>Where 0° lies on the real ring is not known; only angles between places count.</source>
   <translation>Wo 0° am wirklichen Ring liegt, ist nicht bekannt; nur Winkel zwischen Stellen zählen.</translation>
  </message>
  <message>
   <source>Without a recording</source>
   <translation>Ohne Aufzeichnung</translation>
  </message>
  <message>
   <source>Working out speed and path of the car</source>
   <translation>Geschwindigkeit und Weg des Fahrzeugs bestimmen</translation>
  </message>
  <message>
   <source>Would help</source>
   <translation>Helfen würde</translation>
  </message>
  <message>
   <source>Would help: {driving}</source>
   <translation>Helfen würde: {driving}</translation>
  </message>
  <message>
   <source>Write CHECK=OUTCOME or CHECK@FL=OUTCOME.</source>
   <translation>CHECK=OUTCOME oder CHECK@FL=OUTCOME schreiben.</translation>
  </message>
  <message>
   <source>Write [[answer]].</source>
   <translation>[[answer]] schreiben.</translation>
  </message>
  <message>
   <source>Write down: {what}.</source>
   <translation>Notieren: {what}.</translation>
  </message>
  <message>
   <source>Write it like {example}, or name an outcome: {outcomes}.</source>
   <translation>Schreiben wie {example} oder ein Ergebnis nennen: {outcomes}.</translation>
  </message>
  <message>
   <source>Yaw rate</source>
   <translation>Gierrate</translation>
  </message>
  <message>
   <source>Your answer: {claim}, {confidence} % sure: {found}.</source>
   <translation>Ihre Antwort: {claim}, zu {confidence} % sicher: {found}.</translation>
  </message>
  <message>
   <source>Zoom in to fewer seconds.</source>
   <translation>Auf weniger Sekunden vergrößern.</translation>
  </message>
  <message>
   <source>a 7z archive</source>
   <translation>ein 7z-Archiv</translation>
  </message>
  <message>
   <source>a RAR archive</source>
   <translation>ein RAR-Archiv</translation>
  </message>
  <message>
   <source>a bearing needs elements smaller than its pitch circle</source>
   <translation>ein Lager braucht Wälzkörper, die kleiner sind als sein Teilkreis</translation>
  </message>
  <message>
   <source>a channel lies outside its record</source>
   <translation>ein Kanal liegt außerhalb seines Datensatzes</translation>
  </message>
  <message>
   <source>a checksum does not agree with its content</source>
   <translation>eine Prüfsumme passt nicht zum Inhalt</translation>
  </message>
  <message>
   <source>a confidence of {value} % cannot be scored</source>
   <translation>eine Sicherheit von {value} % lässt sich nicht bewerten</translation>
  </message>
  <message>
   <source>a control unit that times its pulses, or a check of the ring itself</source>
   <translation>ein Steuergerät, das die Zeit zwischen den Impulsen misst, oder eine Prüfung des Rings selbst</translation>
  </message>
  <message>
   <source>a drive with slow and fast parts</source>
   <translation>eine Fahrt mit langsamen und schnellen Abschnitten</translation>
  </message>
  <message>
   <source>a factor of 0.001 is missing</source>
   <translation>ein Faktor 0.001 fehlt</translation>
  </message>
  <message>
   <source>a factor of 0.01 is missing</source>
   <translation>ein Faktor 0.01 fehlt</translation>
  </message>
  <message>
   <source>a factor of 100 is missing</source>
   <translation>ein Faktor 100 fehlt</translation>
  </message>
  <message>
   <source>a file name is empty</source>
   <translation>ein Dateiname ist leer</translation>
  </message>
  <message>
   <source>a line of more than a million characters</source>
   <translation>eine Zeile mit mehr als einer Million Zeichen</translation>
  </message>
  <message>
   <source>a line of the class sheet needs a name</source>
   <translation>eine Zeile der Klassenliste braucht einen Namen</translation>
  </message>
  <message>
   <source>a longer drive in which the fault shows</source>
   <translation>eine längere Fahrt, in der sich der Fehler zeigt</translation>
  </message>
  <message>
   <source>a longer drive in which the fault shows itself</source>
   <translation>eine längere Fahrt, in der sich der Fehler zeigt</translation>
  </message>
  <message>
   <source>a longer drive in which the fault shows itself, recorded at 40 Hz or faster</source>
   <translation>eine längere Fahrt, in der sich der Fehler zeigt, aufgezeichnet mit 40 Hz oder schneller</translation>
  </message>
  <message>
   <source>a longer drive with the fault</source>
   <translation>eine längere Fahrt mit dem Fehler</translation>
  </message>
  <message>
   <source>a minute or more above 30 km/h on an ordinary road, recorded at 50 Hz or faster without gaps</source>
   <translation>eine Minute oder mehr über 30 km/h auf gewöhnlicher Straße, aufgezeichnet mit 50 Hz oder schneller und ohne Lücken</translation>
  </message>
  <message>
   <source>a name has signs that are not allowed</source>
   <translation>ein Name enthält unzulässige Zeichen</translation>
  </message>
  <message>
   <source>a note of the side to which the channel is positive, for instance left_positive in its name</source>
   <translation>eine Angabe, nach welcher Seite der Kanal positiv ist, zum Beispiel left_positive im Namen</translation>
  </message>
  <message>
   <source>a part of the path is no folder</source>
   <translation>ein Teil des Pfades ist kein Ordner</translation>
  </message>
  <message>
   <source>a sheet is named ({sheet}), but no file is a workbook</source>
   <translation>ein Blatt ist genannt ({sheet}), aber keine Datei ist eine Arbeitsmappe</translation>
  </message>
  <message>
   <source>a whole number from {low} to {high}</source>
   <translation>eine ganze Zahl von {low} bis {high}</translation>
  </message>
  <message>
   <source>about {times} as long a drive as this one, with more of this: {driving}</source>
   <translation>etwa {times} so lange fahren wie hier, mit mehr davon: {driving}</translation>
  </message>
  <message>
   <source>after frame {number}</source>
   <translation>nach Botschaft {number}</translation>
  </message>
  <message>
   <source>all</source>
   <translation>alle</translation>
  </message>
  <message>
   <source>all speeds are below zero: the car was reversed, or the sign is wrong; they were left so.</source>
   <translation>alle Geschwindigkeiten liegen unter null: das Fahrzeug fuhr rückwärts oder das Vorzeichen ist falsch; sie wurden so belassen.</translation>
  </message>
  <message>
   <source>all wheels</source>
   <translation>alle Räder</translation>
  </message>
  <message>
   <source>all {value} rows bear one and the same time</source>
   <translation>alle {value} Zeilen tragen dieselbe Zeit</translation>
  </message>
  <message>
   <source>an exercise file has the texts {fields}, and nothing else</source>
   <translation>eine Übungsdatei enthält die Texte {fields} und sonst nichts</translation>
  </message>
  <message>
   <source>an old or locked Office file</source>
   <translation>eine alte oder gesperrte Office-Datei</translation>
  </message>
  <message>
   <source>another program uses it</source>
   <translation>ein anderes Programm benutzt es</translation>
  </message>
  <message>
   <source>answer must be a list of tables</source>
   <translation>answer muss eine Liste von Tabellen sein</translation>
  </message>
  <message>
   <source>answer {number}</source>
   <translation>Antwort {number}</translation>
  </message>
  <message>
   <source>answers {first} and {second} are to the same question</source>
   <translation>die Antworten {first} und {second} gehören zur selben Frage</translation>
  </message>
  <message>
   <source>at least one minute of steady straight driving at 30 to 80 km/h, recorded at 20 Hz or more</source>
   <translation>mindestens eine Minute gleichmäßige Geradeausfahrt mit 30 bis 80 km/h, aufgezeichnet mit 20 Hz oder mehr</translation>
  </message>
  <message>
   <source>bad stretches, clockwise from the mark ▲: {places}</source>
   <translation>schadhafte Stellen, im Uhrzeigersinn ab der Marke ▲: {places}</translation>
  </message>
  <message>
   <source>bad stretches, counter-clockwise from the mark ▲: {places}</source>
   <translation>schadhafte Stellen, gegen den Uhrzeigersinn ab der Marke ▲: {places}</translation>
  </message>
  <message>
   <source>being read</source>
   <translation>wird gelesen</translation>
  </message>
  <message>
   <source>blatant</source>
   <translation>krass</translation>
  </message>
  <message>
   <source>block list</source>
   <translation>Blockliste</translation>
  </message>
  <message>
   <source>both</source>
   <translation>beide</translation>
  </message>
  <message>
   <source>brakes</source>
   <translation>bremst</translation>
  </message>
  <message>
   <source>braking from several speeds, with the fault in it</source>
   <translation>Bremsungen aus mehreren Geschwindigkeiten, mit dem Fehler darin</translation>
  </message>
  <message>
   <source>briefly low</source>
   <translation>zu niedrig</translation>
  </message>
  <message>
   <source>by the wheel's own pattern</source>
   <translation>nach dem eigenen Muster des Rades</translation>
  </message>
  <message>
   <source>byte {byte} is not of a text in {encoding}</source>
   <translation>Byte {byte} gehört zu keinem Text in {encoding}</translation>
  </message>
  <message>
   <source>byte {number}</source>
   <translation>Byte {number}</translation>
  </message>
  <message>
   <source>cannot be opened: {reason}</source>
   <translation>nicht zu öffnen: {reason}</translation>
  </message>
  <message>
   <source>cannot be read as a value</source>
   <translation>ist nicht als Wert lesbar</translation>
  </message>
  <message>
   <source>cannot be read: {reason}</source>
   <translation>nicht lesbar: {reason}</translation>
  </message>
  <message>
   <source>cannot be unpacked: {reason}</source>
   <translation>lässt sich nicht entpacken: {reason}</translation>
  </message>
  <message>
   <source>chance hides how the speed runs over a turn</source>
   <translation>der Zufall verdeckt, wie die Geschwindigkeit über die Umdrehung verläuft</translation>
  </message>
  <message>
   <source>channel {name}</source>
   <translation>Kanal {name}</translation>
  </message>
  <message>
   <source>choosing the wheels</source>
   <translation>Räder auswählen</translation>
  </message>
  <message>
   <source>clear</source>
   <translation>deutlich</translation>
  </message>
  <message>
   <source>clock</source>
   <translation>Uhr</translation>
  </message>
  <message>
   <source>confirm the cautions first</source>
   <translation>erst die Warnhinweise bestätigen</translation>
  </message>
  <message>
   <source>could not be written: {reason}</source>
   <translation>nicht zu schreiben: {reason}</translation>
  </message>
  <message>
   <source>damaged frames</source>
   <translation>beschädigte Botschaften</translation>
  </message>
  <message>
   <source>done</source>
   <translation>erledigt</translation>
  </message>
  <message>
   <source>done, and the car is right</source>
   <translation>gemacht, und das Fahrzeug ist in Ordnung</translation>
  </message>
  <message>
   <source>done, and the fault is still there</source>
   <translation>gemacht, und der Fehler ist noch da</translation>
  </message>
  <message>
   <source>driving</source>
   <translation>fahren</translation>
  </message>
  <message>
   <source>driving over bumps, with the fault in it</source>
   <translation>Fahrt über Unebenheiten, mit dem Fehler darin</translation>
  </message>
  <message>
   <source>edge times</source>
   <translation>Flankenzeiten</translation>
  </message>
  <message>
   <source>error frames</source>
   <translation>Fehlerbotschaften</translation>
  </message>
  <message>
   <source>falls from</source>
   <translation>fällt von</translation>
  </message>
  <message>
   <source>fewer than 30 turns sampled finely enough to compare</source>
   <translation>weniger als 30 Umdrehungen, die fein genug zum Vergleichen aufgezeichnet sind</translation>
  </message>
  <message>
   <source>fewer than five lone dips</source>
   <translation>weniger als fünf einzelne Einbrüche</translation>
  </message>
  <message>
   <source>fewer than five separate losses</source>
   <translation>weniger als fünf getrennte Ausfälle</translation>
  </message>
  <message>
   <source>fewer than five separate losses in curves to both sides</source>
   <translation>weniger als fünf getrennte Ausfälle in Kurven nach beiden Seiten</translation>
  </message>
  <message>
   <source>fewer than four separate losses, or too short a drive</source>
   <translation>weniger als vier getrennte Ausfälle, oder eine zu kurze Fahrt</translation>
  </message>
  <message>
   <source>fewer than three drop-outs</source>
   <translation>weniger als drei Ausfälle</translation>
  </message>
  <message>
   <source>first restore the signal</source>
   <translation>zuerst das Signal wiederherstellen</translation>
  </message>
  <message>
   <source>five steady curves to each side at 40 to 60 km/h, as brisk as the road and the law allow</source>
   <translation>fünf gleichmäßig gefahrene Kurven nach jeder Seite mit 40 bis 60 km/h, so zügig, wie Straße und Vorschrift erlauben</translation>
  </message>
  <message>
   <source>five steady curves to each side at 40 to 60 km/h, with the fault in it</source>
   <translation>fünf gleichmäßig gefahrene Kurven nach jeder Seite mit 40 bis 60 km/h, mit dem Fehler darin</translation>
  </message>
  <message>
   <source>five times</source>
   <translation>fünfmal</translation>
  </message>
  <message>
   <source>footer</source>
   <translation>Dateiende</translation>
  </message>
  <message>
   <source>footer or row group</source>
   <translation>Dateiende oder Zeilengruppe</translation>
  </message>
  <message>
   <source>for training</source>
   <translation>zum Üben</translation>
  </message>
  <message>
   <source>four columns name the corners, but their values hardly change and no unit says what they are</source>
   <translation>vier Spalten nennen die Radecken, aber ihre Werte ändern sich kaum, und keine Einheit sagt, was sie sind</translation>
  </message>
  <message>
   <source>frames with damaged data</source>
   <translation>Botschaften mit beschädigten Daten</translation>
  </message>
  <message>
   <source>frames without a readable time</source>
   <translation>Botschaften ohne lesbare Zeit</translation>
  </message>
  <message>
   <source>front</source>
   <translation>vorne</translation>
  </message>
  <message>
   <source>front left</source>
   <translation>vorne links</translation>
  </message>
  <message>
   <source>front left and front right</source>
   <translation>vorne links und vorne rechts</translation>
  </message>
  <message>
   <source>front left and rear left</source>
   <translation>vorne links und hinten links</translation>
  </message>
  <message>
   <source>front left and rear right</source>
   <translation>vorne links und hinten rechts</translation>
  </message>
  <message>
   <source>front right</source>
   <translation>vorne rechts</translation>
  </message>
  <message>
   <source>front right and rear left</source>
   <translation>vorne rechts und hinten links</translation>
  </message>
  <message>
   <source>front right and rear right</source>
   <translation>vorne rechts und hinten rechts</translation>
  </message>
  <message>
   <source>gone</source>
   <translation>weg</translation>
  </message>
  <message>
   <source>gone, others too</source>
   <translation>weg, auch andere</translation>
  </message>
  <message>
   <source>half a minute or more of driving, recorded in steps of 0.1 km/h or finer</source>
   <translation>eine halbe Minute Fahrt oder mehr, aufgezeichnet in Stufen von 0.1 km/h oder feiner</translation>
  </message>
  <message>
   <source>half a minute or more of straight driving above 20 km/h</source>
   <translation>eine halbe Minute oder mehr geradeaus über 20 km/h</translation>
  </message>
  <message>
   <source>hardly any edge is missing</source>
   <translation>es fehlt kaum eine Flanke</translation>
  </message>
  <message>
   <source>hardly to be seen</source>
   <translation>kaum zu sehen</translation>
  </message>
  <message>
   <source>has a resistor in {unit}, not in ohm</source>
   <translation>nennt einen Widerstand in {unit} statt in Ohm</translation>
  </message>
  <message>
   <source>has an implausible limit of {limit} {unit}</source>
   <translation>nennt einen unglaubwürdigen Grenzwert von {limit} {unit}</translation>
  </message>
  <message>
   <source>has an implausible resistor: {value} ohm lies outside {low} to {high} ohm for reading a sensor's current; look for a slip in the decimal point</source>
   <translation>nennt einen unglaubwürdigen Widerstand: {value} Ohm liegen außerhalb von {low} bis {high} Ohm, über denen ein Sensorstrom gemessen wird; auf ein verrutschtes Komma prüfen</translation>
  </message>
  <message>
   <source>has an implausible uncertainty</source>
   <translation>hat eine unglaubwürdige Unsicherheit</translation>
  </message>
  <message>
   <source>has no unit</source>
   <translation>hat keine Einheit</translation>
  </message>
  <message>
   <source>has the unit {unit}, not {right}</source>
   <translation>hat die Einheit {unit} statt {right}</translation>
  </message>
  <message>
   <source>heading</source>
   <translation>Kopfzeile</translation>
  </message>
  <message>
   <source>identifiers in the log (hex): {ids}</source>
   <translation>Kennungen in der Aufzeichnung (hex): {ids}</translation>
  </message>
  <message>
   <source>in one of the two the car stands still.</source>
   <translation>in einer der beiden steht das Fahrzeug.</translation>
  </message>
  <message>
   <source>inner, relieved</source>
   <translation>innen, entlastet</translation>
  </message>
  <message>
   <source>is a folder</source>
   <translation>ist ein Ordner</translation>
  </message>
  <message>
   <source>is a voltage: say across which resistor it was read</source>
   <translation>ist eine Spannung: angeben, über welchem Widerstand gemessen wurde</translation>
  </message>
  <message>
   <source>is not plausible: {value} {unit} lies outside {low} to {high} {unit}</source>
   <translation>ist nicht glaubwürdig: {value} {unit} liegt außerhalb von {low} bis {high} {unit}</translation>
  </message>
  <message>
   <source>it begins or ends behind the end of any message</source>
   <translation>es beginnt oder endet hinter dem Ende jeder Botschaft</translation>
  </message>
  <message>
   <source>it cannot be read: {reason}</source>
   <translation>nicht lesbar: {reason}</translation>
  </message>
  <message>
   <source>it holds no frame</source>
   <translation>sie enthält keine Botschaft</translation>
  </message>
  <message>
   <source>it holds no list of mappings</source>
   <translation>darin steht keine Liste von Zuordnungen</translation>
  </message>
  <message>
   <source>it is a folder</source>
   <translation>es ist ein Ordner</translation>
  </message>
  <message>
   <source>it is binary of no known kind</source>
   <translation>es ist binär und von keiner bekannten Art</translation>
  </message>
  <message>
   <source>it is cut off</source>
   <translation>der Inhalt ist abgeschnitten</translation>
  </message>
  <message>
   <source>it is nested too deeply</source>
   <translation>der Inhalt ist zu tief verschachtelt</translation>
  </message>
  <message>
   <source>it is no JSON: {reason}</source>
   <translation>das ist kein JSON: {reason}</translation>
  </message>
  <message>
   <source>it is no file of remembered mappings</source>
   <translation>das ist keine Datei mit gemerkten Zuordnungen</translation>
  </message>
  <message>
   <source>it is not said which wheel is meant</source>
   <translation>es ist nicht gesagt, welches Rad gemeint ist</translation>
  </message>
  <message>
   <source>it is protected by a password</source>
   <translation>der Inhalt ist durch ein Passwort geschützt</translation>
  </message>
  <message>
   <source>it is {meanings}</source>
   <translation>er bedeutet {meanings}</translation>
  </message>
  <message>
   <source>it looks like {name}, but its content is damaged: {reason}</source>
   <translation>es sieht aus wie {name}, aber der Inhalt ist beschädigt: {reason}</translation>
  </message>
  <message>
   <source>it uses a form that is not known here</source>
   <translation>die Form des Inhalts ist hier nicht bekannt</translation>
  </message>
  <message>
   <source>its cells are formulas that were never calculated, so they hold no numbers</source>
   <translation>die Zellen sind Formeln, die nie berechnet wurden, und enthalten daher keine Zahlen</translation>
  </message>
  <message>
   <source>its content is not of the right form ({kind})</source>
   <translation>der Inhalt hat nicht die richtige Form ({kind})</translation>
  </message>
  <message>
   <source>its factor, offset or limits are no usable numbers</source>
   <translation>ihr Faktor, Versatz oder ihre Grenzen sind keine brauchbaren Zahlen</translation>
  </message>
  <message>
   <source>its folder does not exist</source>
   <translation>der Ordner dafür fehlt</translation>
  </message>
  <message>
   <source>its links lead in a circle</source>
   <translation>die Verknüpfungen führen im Kreis</translation>
  </message>
  <message>
   <source>its schema is not {schema}</source>
   <translation>das Schema ist nicht {schema}</translation>
  </message>
  <message>
   <source>its text has no table of numbers and no frames</source>
   <translation>der Text enthält weder eine Zahlentabelle noch Botschaften</translation>
  </message>
  <message>
   <source>judging the columns</source>
   <translation>Spalten beurteilen</translation>
  </message>
  <message>
   <source>kept, because the other counters run</source>
   <translation>behalten, weil die anderen Zähler laufen</translation>
  </message>
  <message>
   <source>km/h were taken for m/s</source>
   <translation>km/h für m/s gehalten wurden</translation>
  </message>
  <message>
   <source>km/h were taken for mph</source>
   <translation>km/h für mph gehalten wurden</translation>
  </message>
  <message>
   <source>larger than {most} bytes</source>
   <translation>größer als {most} Byte</translation>
  </message>
  <message>
   <source>larger than {most} bytes: this is no exercise</source>
   <translation>größer als {most} Byte: das ist keine Übung</translation>
  </message>
  <message>
   <source>left and right of both axles</source>
   <translation>links und rechts an beiden Achsen</translation>
  </message>
  <message>
   <source>left and right of one axle</source>
   <translation>links und rechts einer Achse</translation>
  </message>
  <message>
   <source>left curve</source>
   <translation>links</translation>
  </message>
  <message>
   <source>left out</source>
   <translation>weggelassen</translation>
  </message>
  <message>
   <source>left-hand</source>
   <translation>Links</translation>
  </message>
  <message>
   <source>length in seconds</source>
   <translation>Dauer in Sekunden</translation>
  </message>
  <message>
   <source>less than {time} s of driving above walking pace</source>
   <translation>weniger als {time} s Fahrt über Schritttempo</translation>
  </message>
  <message>
   <source>less than {way} m of usable driving</source>
   <translation>weniger als {way} m brauchbare Fahrt</translation>
  </message>
  <message>
   <source>line {number}</source>
   <translation>Zeile {number}</translation>
  </message>
  <message>
   <source>log read</source>
   <translation>Aufzeichnung gelesen</translation>
  </message>
  <message>
   <source>m/s were taken for km/h</source>
   <translation>m/s für km/h gehalten wurden</translation>
  </message>
  <message>
   <source>mapping {number} is none</source>
   <translation>Zuordnung {number} ist keine</translation>
  </message>
  <message>
   <source>mapping {number} must hold signals and wheels as texts</source>
   <translation>Zuordnung {number} muss Signale und Räder als Texte enthalten</translation>
  </message>
  <message>
   <source>mapping {number} names an unknown wheel or unit</source>
   <translation>Zuordnung {number} nennt ein unbekanntes Rad oder eine unbekannte Einheit</translation>
  </message>
  <message>
   <source>message {name} is said to be {count} bytes long</source>
   <translation>die Botschaft {name} soll {count} Byte lang sein</translation>
  </message>
  <message>
   <source>more than {most} recordings</source>
   <translation>mehr als {most} Aufzeichnungen</translation>
  </message>
  <message>
   <source>mph were taken for km/h</source>
   <translation>mph für km/h gehalten wurden</translation>
  </message>
  <message>
   <source>names a limit, which this check does not take</source>
   <translation>nennt einen Grenzwert, den diese Prüfung nicht braucht</translation>
  </message>
  <message>
   <source>names a resistor, which only belongs to a current read as a voltage</source>
   <translation>nennt einen Widerstand; der gehört nur zu einem Strom, der als Spannung gemessen wurde</translation>
  </message>
  <message>
   <source>needs the maker's limit for this car; there is no universal one</source>
   <translation>braucht den Grenzwert des Herstellers für dieses Fahrzeug; einen allgemeingültigen gibt es nicht</translation>
  </message>
  <message>
   <source>needs {access}</source>
   <translation>nötig: {access}</translation>
  </message>
  <message>
   <source>neither wheel nor cause</source>
   <translation>weder Rad noch Ursache</translation>
  </message>
  <message>
   <source>no check known to the program would tell them apart.</source>
   <translation>keine Prüfung, die das Programm kennt, würde sie unterscheiden.</translation>
  </message>
  <message>
   <source>no column of edges was found for the {wheel} wheel ({corner}); columns of edges: {found}</source>
   <translation>für das Rad {wheel} ({corner}) wurde keine Spalte mit Flanken gefunden; Spalten mit Flanken: {found}</translation>
  </message>
  <message>
   <source>no column of time among {names}</source>
   <translation>keine Zeitspalte unter {names}</translation>
  </message>
  <message>
   <source>no columns of frames were found</source>
   <translation>es wurden keine Spalten mit Botschaften gefunden</translation>
  </message>
  <message>
   <source>no constant ratio that needs explaining</source>
   <translation>kein gleichbleibendes Verhältnis, das zu erklären wäre</translation>
  </message>
  <message>
   <source>no disturbance that keeps to one part of the ring</source>
   <translation>keine Störung, die sich an einen Teil des Ringes hält</translation>
  </message>
  <message>
   <source>no drive known to the program would tell them apart.</source>
   <translation>keine Fahrt, die das Programm kennt, würde sie unterscheiden.</translation>
  </message>
  <message>
   <source>no exchange of two wheels explains the log better</source>
   <translation>kein Tausch zweier Räder erklärt die Aufzeichnung besser</translation>
  </message>
  <message>
   <source>no exercise can have the cause {cause}</source>
   <translation>keine Übung kann die Ursache {cause} haben</translation>
  </message>
  <message>
   <source>no fault found</source>
   <translation>kein Fehler gefunden</translation>
  </message>
  <message>
   <source>no file was given</source>
   <translation>es wurde keine Datei angegeben</translation>
  </message>
  <message>
   <source>no frame could be read</source>
   <translation>keine Botschaft war lesbar</translation>
  </message>
  <message>
   <source>no loss of this wheel</source>
   <translation>kein Ausfall dieses Rades</translation>
  </message>
  <message>
   <source>no moments of both kinds to compare</source>
   <translation>es fehlen Augenblicke beider Arten zum Vergleichen</translation>
  </message>
  <message>
   <source>no recording</source>
   <translation>keine Aufzeichnung</translation>
  </message>
  <message>
   <source>no ripple that repeats with the revolution stands out of the noise</source>
   <translation>keine Welligkeit, die sich mit der Umdrehung wiederholt, hebt sich vom Rauschen ab</translation>
  </message>
  <message>
   <source>no row of the table is a readable frame</source>
   <translation>keine Zeile der Tabelle ist eine lesbare Botschaft</translation>
  </message>
  <message>
   <source>no rows of numbers were found</source>
   <translation>es wurden keine Zeilen mit Zahlen gefunden</translation>
  </message>
  <message>
   <source>no samples were found</source>
   <translation>es wurden keine Messwerte gefunden</translation>
  </message>
  <message>
   <source>no sheet holds a table of numbers with a heading</source>
   <translation>kein Blatt enthält eine Tabelle mit Zahlen und Überschrift</translation>
  </message>
  <message>
   <source>no signal was found for the {wheel} wheel ({corner})</source>
   <translation>für das Rad {wheel} ({corner}) wurde kein Signal gefunden</translation>
  </message>
  <message>
   <source>no sudden drops that keep to one part of the ring</source>
   <translation>keine plötzlichen Einbrüche, die sich an einen Teil des Ringes halten</translation>
  </message>
  <message>
   <source>none</source>
   <translation>keine</translation>
  </message>
  <message>
   <source>none of the lists here has it</source>
   <translation>keine der Listen hier enthält ihn</translation>
  </message>
  <message>
   <source>none of the {count} files in the archive is a recording</source>
   <translation>keine der {count} Dateien im Archiv ist eine Aufzeichnung</translation>
  </message>
  <message>
   <source>none yet</source>
   <translation>noch keines</translation>
  </message>
  <message>
   <source>not decided</source>
   <translation>nicht entschieden</translation>
  </message>
  <message>
   <source>not enough curves to both sides with noticeable side load</source>
   <translation>zu wenige Kurven nach beiden Seiten mit spürbarer Seitenkraft</translation>
  </message>
  <message>
   <source>not enough stretches as outer and as inner wheel</source>
   <translation>zu wenige Abschnitte als äußeres und als inneres Rad</translation>
  </message>
  <message>
   <source>not from the recording</source>
   <translation>nicht aus der Aufzeichnung</translation>
  </message>
  <message>
   <source>not known</source>
   <translation>nicht bekannt</translation>
  </message>
  <message>
   <source>nothing asked yet</source>
   <translation>noch nichts gefragt</translation>
  </message>
  <message>
   <source>nothing can be written there</source>
   <translation>dort lässt sich nichts schreiben</translation>
  </message>
  <message>
   <source>nothing in the speed keeps clearly to one part of the ring</source>
   <translation>nichts an der Geschwindigkeit hält sich deutlich an einen Teil des Rings</translation>
  </message>
  <message>
   <source>nothing remembered was used. {error}</source>
   <translation>nichts Gemerktes wurde verwendet. {error}</translation>
  </message>
  <message>
   <source>nothing was built in: all four wheel ends are sound</source>
   <translation>nichts wurde eingebaut: alle vier Räder sind in Ordnung</translation>
  </message>
  <message>
   <source>nothing was handed in yet</source>
   <translation>es wurde noch nichts abgegeben</translation>
  </message>
  <message>
   <source>on or outcome cannot be understood</source>
   <translation>on oder outcome ist nicht zu verstehen</translation>
  </message>
  <message>
   <source>one cause stands out</source>
   <translation>eine Ursache sticht hervor</translation>
  </message>
  <message>
   <source>one column of edges would serve for two wheels</source>
   <translation>eine Spalte mit Flanken würde für zwei Räder dienen</translation>
  </message>
  <message>
   <source>one corner stands out</source>
   <translation>eine Radecke sticht hervor</translation>
  </message>
  <message>
   <source>one minute or more of driving above walking pace</source>
   <translation>eine Minute Fahrt oder mehr über Schritttempo</translation>
  </message>
  <message>
   <source>one minute or more of driving, with stops, curves to both sides and a steady straight part</source>
   <translation>eine Minute Fahrt oder mehr, mit Halten, Kurven nach beiden Seiten und einem gleichmäßigen geraden Stück</translation>
  </message>
  <message>
   <source>one of {values}</source>
   <translation>eines von {values}</translation>
  </message>
  <message>
   <source>one signal might be, but need not be, that of the {wheel} wheel ({corner})</source>
   <translation>ein Signal könnte das des Rades {wheel} ({corner}) sein, muss es aber nicht</translation>
  </message>
  <message>
   <source>one signal would serve for two wheels</source>
   <translation>ein Signal würde für zwei Räder dienen</translation>
  </message>
  <message>
   <source>only one of the signals {names} holds valid numbers</source>
   <translation>nur eines der Signale {names} enthält gültige Zahlen</translation>
  </message>
  <message>
   <source>only {rate} samples a second; short losses and ripple cannot be seen.</source>
   <translation>nur {rate} Messwerte je Sekunde; kurze Ausfälle und Welligkeit sind nicht zu sehen.</translation>
  </message>
  <message>
   <source>or the trouble code and the list it belongs to, such as {example}</source>
   <translation>oder der Fehlercode und die Liste, zu der er gehört, etwa {example}</translation>
  </message>
  <message>
   <source>or the value in {unit} ({low} to {high}){limit}{shunt}</source>
   <translation>oder der Wert in {unit} ({low} bis {high}){limit}{shunt}</translation>
  </message>
  <message>
   <source>outcome {number}</source>
   <translation>Ergebnis {number}</translation>
  </message>
  <message>
   <source>outer, loaded</source>
   <translation>außen, belastet</translation>
  </message>
  <message>
   <source>over 99 %</source>
   <translation>über 99 %</translation>
  </message>
  <message>
   <source>over {factor} times</source>
   <translation>mehr als {factor}-mal</translation>
  </message>
  <message>
   <source>part {index} starts its clock anew; it was joined to the end of the part before.</source>
   <translation>Teil {index} beginnt seine Uhr neu; er wurde an das Ende des Teils davor gefügt.</translation>
  </message>
  <message>
   <source>printed</source>
   <translation>Textausgabe</translation>
  </message>
  <message>
   <source>prior_cars must be a number from {low} to {high}</source>
   <translation>prior_cars muss eine Zahl von {low} bis {high} sein</translation>
  </message>
  <message>
   <source>pulls away</source>
   <translation>fährt an</translation>
  </message>
  <message>
   <source>pulse counters of the wheels in the recording, and half a minute or more of straight driving</source>
   <translation>Impulszähler der Räder in der Aufzeichnung und eine halbe Minute oder mehr geradeaus</translation>
  </message>
  <message>
   <source>pulses_per_rev in a vehicle file, or a longer recording</source>
   <translation>pulses_per_rev in einer Fahrzeugdatei, oder eine längere Aufzeichnung</translation>
  </message>
  <message>
   <source>races or rolling elements are damaged; the wheel speed hardly shows it</source>
   <translation>Laufbahnen oder Wälzkörper sind beschädigt; die Radgeschwindigkeit zeigt es kaum</translation>
  </message>
  <message>
   <source>read</source>
   <translation>gelesen</translation>
  </message>
  <message>
   <source>reading frames</source>
   <translation>Botschaften lesen</translation>
  </message>
  <message>
   <source>reading signals</source>
   <translation>Signale lesen</translation>
  </message>
  <message>
   <source>reading the edges</source>
   <translation>Flanken lesen</translation>
  </message>
  <message>
   <source>reading the table</source>
   <translation>Tabelle lesen</translation>
  </message>
  <message>
   <source>reading the workbook</source>
   <translation>Arbeitsmappe lesen</translation>
  </message>
  <message>
   <source>reading {kind}</source>
   <translation>{kind} lesen</translation>
  </message>
  <message>
   <source>rear</source>
   <translation>hinten</translation>
  </message>
  <message>
   <source>rear left</source>
   <translation>hinten links</translation>
  </message>
  <message>
   <source>rear left and rear right</source>
   <translation>hinten links und hinten rechts</translation>
  </message>
  <message>
   <source>rear right</source>
   <translation>hinten rechts</translation>
  </message>
  <message>
   <source>recorder paused</source>
   <translation>Pause</translation>
  </message>
  <message>
   <source>recording</source>
   <translation>aufzeichnen</translation>
  </message>
  <message>
   <source>remote frames</source>
   <translation>Anforderungsbotschaften</translation>
  </message>
  <message>
   <source>right</source>
   <translation>richtig</translation>
  </message>
  <message>
   <source>right curve</source>
   <translation>rechts</translation>
  </message>
  <message>
   <source>right-hand</source>
   <translation>Rechts</translation>
  </message>
  <message>
   <source>rises from</source>
   <translation>steigt von</translation>
  </message>
  <message>
   <source>road test of an exercise</source>
   <translation>Probefahrt einer Übung</translation>
  </message>
  <message>
   <source>seed of the car</source>
   <translation>Startwert des Fahrzeugs</translation>
  </message>
  <message>
   <source>seed of the drive</source>
   <translation>Startwert der Fahrt</translation>
  </message>
  <message>
   <source>several columns of edges fit the {wheel} wheel ({corner}); columns of edges: {found}</source>
   <translation>für das Rad {wheel} ({corner}) passen mehrere Spalten mit Flanken; Spalten mit Flanken: {found}</translation>
  </message>
  <message>
   <source>several sets of signals could be the wheel speeds, and they do not agree</source>
   <translation>mehrere Sätze von Signalen könnten die Radgeschwindigkeiten sein, und sie stimmen nicht überein</translation>
  </message>
  <message>
   <source>several signals fit the {wheel} wheel ({corner})</source>
   <translation>mehrere Signale passen zum Rad {wheel} ({corner})</translation>
  </message>
  <message>
   <source>severity</source>
   <translation>Schwere</translation>
  </message>
  <message>
   <source>sheet {name}</source>
   <translation>Blatt {name}</translation>
  </message>
  <message>
   <source>signal {name}</source>
   <translation>Signal {name}</translation>
  </message>
  <message>
   <source>silent, slow</source>
   <translation>stumm</translation>
  </message>
  <message>
   <source>slight</source>
   <translation>leicht</translation>
  </message>
  <message>
   <source>slow roll</source>
   <translation>rollt langsam</translation>
  </message>
  <message>
   <source>sorting the edges</source>
   <translation>Flanken ordnen</translation>
  </message>
  <message>
   <source>sought in the recording</source>
   <translation>in der Aufzeichnung gesucht</translation>
  </message>
  <message>
   <source>speed swings by {swing} % once in every turn (drawn larger)</source>
   <translation>die Drehzahl schwankt um {swing} % einmal je Umdrehung (größer gezeichnet)</translation>
  </message>
  <message>
   <source>speeds from edges</source>
   <translation>Geschwindigkeiten aus Flanken</translation>
  </message>
  <message>
   <source>stands</source>
   <translation>steht</translation>
  </message>
  <message>
   <source>stays at {share}</source>
   <translation>bleibt bei {share}</translation>
  </message>
  <message>
   <source>steady driving at 20 to 50 km/h for some minutes, with the fault in it</source>
   <translation>einige Minuten gleichmäßige Fahrt mit 20 bis 50 km/h, mit dem Fehler darin</translation>
  </message>
  <message>
   <source>steady straight driving of 200 wheel turns or more while the fault is present</source>
   <translation>gleichmäßige Geradeausfahrt über 200 Radumdrehungen oder mehr, während der Fehler da ist</translation>
  </message>
  <message>
   <source>straight</source>
   <translation>geradeaus</translation>
  </message>
  <message>
   <source>straight on</source>
   <translation>geradeaus</translation>
  </message>
  <message>
   <source>supply, control unit or recorder: all wheels at the same instant</source>
   <translation>Versorgung, Steuergerät oder Aufzeichnungsgerät: alle Räder im selben Augenblick</translation>
  </message>
  <message>
   <source>table</source>
   <translation>Tabelle</translation>
  </message>
  <message>
   <source>table (bar separated)</source>
   <translation>Tabelle (mit Strich getrennt)</translation>
  </message>
  <message>
   <source>table (blank separated)</source>
   <translation>Tabelle (mit Leerzeichen getrennt)</translation>
  </message>
  <message>
   <source>table (comma separated)</source>
   <translation>Tabelle (mit Komma getrennt)</translation>
  </message>
  <message>
   <source>table (semicolon separated)</source>
   <translation>Tabelle (mit Semikolon getrennt)</translation>
  </message>
  <message>
   <source>table (tab separated)</source>
   <translation>Tabelle (mit Tabulator getrennt)</translation>
  </message>
  <message>
   <source>taken from another wheel, for this one shows no pattern of its own; its angle may creep</source>
   <translation>von einem anderen Rad übernommen, weil dieses kein eigenes Muster zeigt; der Winkel kann wandern</translation>
  </message>
  <message>
   <source>ten times</source>
   <translation>zehnmal</translation>
  </message>
  <message>
   <source>the MDF file cannot be read: {reason}</source>
   <translation>die MDF-Datei ist nicht lesbar: {reason}</translation>
  </message>
  <message>
   <source>the Parquet table cannot be read: {reason}</source>
   <translation>die Parquet-Tabelle ist nicht lesbar: {reason}</translation>
  </message>
  <message>
   <source>the answer was handed in, and nothing can be changed any more</source>
   <translation>die Antwort ist abgegeben, nichts lässt sich mehr ändern</translation>
  </message>
  <message>
   <source>the archive holds more than {most} files</source>
   <translation>das Archiv enthält mehr als {most} Dateien</translation>
  </message>
  <message>
   <source>the archive holds no file</source>
   <translation>das Archiv enthält keine Datei</translation>
  </message>
  <message>
   <source>the car is not right</source>
   <translation>das Fahrzeug ist nicht in Ordnung</translation>
  </message>
  <message>
   <source>the car is not right; the right repair follows</source>
   <translation>das Fahrzeug ist nicht in Ordnung; die richtige Reparatur folgt</translation>
  </message>
  <message>
   <source>the car is right</source>
   <translation>das Fahrzeug ist in Ordnung</translation>
  </message>
  <message>
   <source>the car never rolled slowly</source>
   <translation>das Fahrzeug rollte nie langsam</translation>
  </message>
  <message>
   <source>the car stands all the time; no wheel speed can be judged.</source>
   <translation>das Fahrzeug steht die ganze Zeit; keine Radgeschwindigkeit ist zu beurteilen.</translation>
  </message>
  <message>
   <source>the cause is right, the wheel is not</source>
   <translation>die Ursache stimmt, das Rad nicht</translation>
  </message>
  <message>
   <source>the check {check} takes no trouble code</source>
   <translation>die Prüfung {check} nimmt keinen Fehlercode an</translation>
  </message>
  <message>
   <source>the check {id} takes no value ({text})</source>
   <translation>die Prüfung {id} nimmt keinen Messwert ({text})</translation>
  </message>
  <message>
   <source>the clock of {said} does not run with those of the other wheels, though it has as many samples; the times were left as they are, so comparisons of this wheel with the others may be wrong.</source>
   <translation>die Uhr von {said} läuft nicht mit denen der anderen Räder, obwohl sie ebenso viele Messwerte hat; die Zeiten blieben, wie sie sind, Vergleiche dieses Rades mit den anderen können daher falsch sein.</translation>
  </message>
  <message>
   <source>the column {name}</source>
   <translation>die Spalte {name}</translation>
  </message>
  <message>
   <source>the columns or signals that hold the wheel speeds (--map), and the right byte order of the signals</source>
   <translation>die Spalten oder Signale mit den Raddrehzahlen (--map) und die richtige Bytereihenfolge der Signale</translation>
  </message>
  <message>
   <source>the control unit's own steps, which are as large at any speed, hide a small swing</source>
   <translation>die eigenen Stufen des Steuergeräts, bei jeder Geschwindigkeit gleich groß, verdecken eine kleine Schwankung</translation>
  </message>
  <message>
   <source>the damaged settings cannot be put aside: {reason}</source>
   <translation>die beschädigten Einstellungen lassen sich nicht beiseitelegen: {reason}</translation>
  </message>
  <message>
   <source>the data of no frame can be read, the first of which is {example}</source>
   <translation>die Daten keiner Botschaft sind lesbar, die erste ist {example}</translation>
  </message>
  <message>
   <source>the database cannot be read: {reason}</source>
   <translation>die Datenbank ist nicht lesbar: {reason}</translation>
  </message>
  <message>
   <source>the database defines a document type or entities, as no exported database does</source>
   <translation>die Datenbank definiert einen Dokumenttyp oder Entitäten, wie keine exportierte Datenbank</translation>
  </message>
  <message>
   <source>the database describes more than {most} signals</source>
   <translation>die Datenbank beschreibt mehr als {most} Signale</translation>
  </message>
  <message>
   <source>the database describes none of the identifiers in the log; it belongs to another car or bus</source>
   <translation>die Datenbank beschreibt keine der Kennungen in der Aufzeichnung; sie gehört zu einem anderen Fahrzeug oder Bus</translation>
  </message>
  <message>
   <source>the database is empty</source>
   <translation>die Datenbank ist leer</translation>
  </message>
  <message>
   <source>the database is too large</source>
   <translation>die Datenbank ist zu groß</translation>
  </message>
  <message>
   <source>the database names no wheel speed; name the signals with --map if you know them</source>
   <translation>die Datenbank nennt keine Radgeschwindigkeit; die Signale mit --map nennen, wenn sie bekannt sind</translation>
  </message>
  <message>
   <source>the drive does not read or write it</source>
   <translation>das Laufwerk kann es nicht lesen oder schreiben</translation>
  </message>
  <message>
   <source>the edges span {value} hours; their unit of time may be another</source>
   <translation>die Flanken umspannen {value} Stunden; ihre Zeiteinheit ist vielleicht eine andere</translation>
  </message>
  <message>
   <source>the exercise cannot be used here: {reason}</source>
   <translation>die Übung ist hier nicht verwendbar: {reason}</translation>
  </message>
  <message>
   <source>the exercise was altered: its parts do not belong together</source>
   <translation>die Übung wurde verändert: ihre Teile gehören nicht zusammen</translation>
  </message>
  <message>
   <source>the exercise was saved by another version of the program</source>
   <translation>die Übung wurde mit einer anderen Programmversion gespeichert</translation>
  </message>
  <message>
   <source>the exercise's number or the driver's words are not of the right form</source>
   <translation>die Nummer der Übung oder die Worte des Fahrers haben nicht die richtige Form</translation>
  </message>
  <message>
   <source>the experience of the workshop is off</source>
   <translation>die Erfahrung der Werkstatt ist ausgeschaltet</translation>
  </message>
  <message>
   <source>the file ends in the middle of a container</source>
   <translation>die Datei endet mitten in einem Behälter</translation>
  </message>
  <message>
   <source>the file ends in the middle of a record</source>
   <translation>die Datei endet mitten in einem Datensatz</translation>
  </message>
  <message>
   <source>the file ends inside its header</source>
   <translation>die Datei endet im Kopf</translation>
  </message>
  <message>
   <source>the file is empty</source>
   <translation>die Datei ist leer</translation>
  </message>
  <message>
   <source>the file was changed while it was read</source>
   <translation>die Datei wurde während des Lesens geändert</translation>
  </message>
  <message>
   <source>the first column has no name; it</source>
   <translation>die erste Spalte hat keinen Namen; sie</translation>
  </message>
  <message>
   <source>the folder holds {count} recordings whose times do not join to one drive: {names}</source>
   <translation>der Ordner enthält {count} Aufzeichnungen, deren Zeiten sich nicht zu einer Fahrt fügen: {names}</translation>
  </message>
  <message>
   <source>the four wheels state different units: {known}</source>
   <translation>die vier Räder nennen verschiedene Einheiten: {known}</translation>
  </message>
  <message>
   <source>the front and the rear axle</source>
   <translation>Vorder- und Hinterachse</translation>
  </message>
  <message>
   <source>the group has no name</source>
   <translation>die Gruppe hat keinen Namen</translation>
  </message>
  <message>
   <source>the hidden part is damaged</source>
   <translation>der verborgene Teil ist beschädigt</translation>
  </message>
  <message>
   <source>the hub tilts, and the ring moves under the sensor</source>
   <translation>die Nabe kippt, und der Ring bewegt sich unter dem Sensor</translation>
  </message>
  <message>
   <source>the identifier {id} of message {message} is too large</source>
   <translation>die Kennung {id} der Botschaft {message} ist zu groß</translation>
  </message>
  <message>
   <source>the identifiers of the wheel speeds are in the log, but with 11 bits where the database says 29, or the other way round</source>
   <translation>die Kennungen der Radgeschwindigkeiten stehen in der Aufzeichnung, aber mit 11 Bit, wo die Datenbank 29 sagt, oder umgekehrt</translation>
  </message>
  <message>
   <source>the index of the sample logs does not name it</source>
   <translation>das Verzeichnis der beiliegenden Aufzeichnungen nennt sie nicht</translation>
  </message>
  <message>
   <source>the last line is cut off</source>
   <translation>die letzte Zeile ist abgeschnitten</translation>
  </message>
  <message>
   <source>the lead loses contact for moments</source>
   <translation>die Leitung verliert für Augenblicke den Kontakt</translation>
  </message>
  <message>
   <source>the leads of two wheels are exchanged</source>
   <translation>die Leitungen zweier Räder sind vertauscht</translation>
  </message>
  <message>
   <source>the length of a wheel's turn was not found</source>
   <translation>die Länge einer Radumdrehung wurde nicht gefunden</translation>
  </message>
  <message>
   <source>the list {list} has no {code}</source>
   <translation>die Liste {list} enthält {code} nicht</translation>
  </message>
  <message>
   <source>the log does not state the positive side of its yaw rate or steering, which opposes the wheels</source>
   <translation>die Aufzeichnung gibt nicht an, nach welcher Seite Gierrate oder Lenkung positiv sind, und sie widersprechen den Rädern</translation>
  </message>
  <message>
   <source>the log has no pulse counter of this wheel</source>
   <translation>die Aufzeichnung enthält keinen Impulszähler dieses Rades</translation>
  </message>
  <message>
   <source>the log holds CAN frames; without a signal database they tell no wheel speed; {present}</source>
   <translation>die Aufzeichnung enthält CAN-Botschaften; ohne Signaldatenbank sagen sie keine Radgeschwindigkeit; {present}</translation>
  </message>
  <message>
   <source>the log holds no times of single edges</source>
   <translation>die Aufzeichnung enthält keine Zeiten einzelner Flanken</translation>
  </message>
  <message>
   <source>the log holds no yaw rate, steering or lateral acceleration</source>
   <translation>die Aufzeichnung enthält weder Gierrate noch Lenkung noch Querbeschleunigung</translation>
  </message>
  <message>
   <source>the log is short: {size} rows in {duration_s} s do not allow most measurements.</source>
   <translation>die Aufzeichnung ist kurz: {size} Zeilen in {duration_s} s erlauben die meisten Messungen nicht.</translation>
  </message>
  <message>
   <source>the log is too short: {n} samples, not enough for any measurement</source>
   <translation>die Aufzeichnung ist zu kurz: {n} Messwerte, zu wenig für jede Messung</translation>
  </message>
  <message>
   <source>the messages with the wheel speeds ({wanted}) are not in the log</source>
   <translation>die Botschaften mit den Radgeschwindigkeiten ({wanted}) stehen nicht in der Aufzeichnung</translation>
  </message>
  <message>
   <source>the middle of the wheels mostly jumps further from sample to sample than a car can brake or speed up: these are no wheel speeds</source>
   <translation>die Mitte der Räder springt meist von Wert zu Wert weiter, als ein Auto bremsen oder beschleunigen kann: Das sind keine Raddrehzahlen</translation>
  </message>
  <message>
   <source>the name is too long</source>
   <translation>der Name ist zu lang</translation>
  </message>
  <message>
   <source>the number is no whole number, or another field no text</source>
   <translation>die Nummer ist keine ganze Zahl oder ein anderes Feld kein Text</translation>
  </message>
  <message>
   <source>the number of poles shows neither in the edges nor in the vehicle file</source>
   <translation>die Polzahl geht weder aus den Flanken noch aus der Fahrzeugdatei hervor</translation>
  </message>
  <message>
   <source>the number {number} is given twice</source>
   <translation>die Nummer {number} ist doppelt vergeben</translation>
  </message>
  <message>
   <source>the other wheels' turns do not agree to a pulse</source>
   <translation>die Umdrehungen der anderen Räder stimmen nicht auf einen Impuls überein</translation>
  </message>
  <message>
   <source>the packed file is empty</source>
   <translation>die gepackte Datei ist leer</translation>
  </message>
  <message>
   <source>the program failed: {what}</source>
   <translation>das Programm hat einen Fehler: {what}</translation>
  </message>
  <message>
   <source>the pulse counters overflow at {value} or at {rival}; {value2} was taken, which the numbers fit better.</source>
   <translation>die Impulszähler laufen bei {value} oder bei {rival} über; {value2} wurde genommen, das passt besser zu den Zahlen.</translation>
  </message>
  <message>
   <source>the recorded numbers are too coarse to show any noise</source>
   <translation>die aufgezeichneten Zahlen sind zu grob, um Rauschen zu zeigen</translation>
  </message>
  <message>
   <source>the remembered mappings cannot be used: {reason}</source>
   <translation>die gemerkten Zuordnungen sind nicht verwendbar: {reason}</translation>
  </message>
  <message>
   <source>the rest is damaged ({reason})</source>
   <translation>der Rest ist beschädigt ({reason})</translation>
  </message>
  <message>
   <source>the revolution found fits neither the other wheels nor this wheel's own ratio to them</source>
   <translation>die gefundene Umdrehung passt weder zu den anderen Rädern noch zum eigenen Verhältnis dieses Rades zu ihnen</translation>
  </message>
  <message>
   <source>the revolution of the wheel is not known, so losses cannot be placed on the ring</source>
   <translation>die Umdrehung des Rades ist nicht bekannt, daher sind Ausfälle nicht am Ring zu verorten</translation>
  </message>
  <message>
   <source>the revolution was not found on this wheel</source>
   <translation>die Umdrehung wurde an diesem Rad nicht gefunden</translation>
  </message>
  <message>
   <source>the revolution was not found on this wheel and two others</source>
   <translation>die Umdrehung wurde an diesem Rad und zwei anderen nicht gefunden</translation>
  </message>
  <message>
   <source>the right unit (--unit), or the right factor in the signal database</source>
   <translation>die richtige Einheit (--unit) oder der richtige Faktor in der Signaldatenbank</translation>
  </message>
  <message>
   <source>the road is too even to show which wheel meets it first</source>
   <translation>die Straße ist zu eben, um zu zeigen, welches Rad sie zuerst trifft</translation>
  </message>
  <message>
   <source>the seed {seed} is negative</source>
   <translation>der Startwert {seed} ist negativ</translation>
  </message>
  <message>
   <source>the sensor itself fails now and then</source>
   <translation>der Sensor selbst fällt ab und zu aus</translation>
  </message>
  <message>
   <source>the sensor stands too far from the ring</source>
   <translation>der Sensor steht zu weit vom Ring</translation>
  </message>
  <message>
   <source>the sheet has more than {most} cells</source>
   <translation>das Blatt hat mehr als {most} Zellen</translation>
  </message>
  <message>
   <source>the signal is lost too often to form a ratio</source>
   <translation>das Signal fällt zu oft aus, um ein Verhältnis zu bilden</translation>
  </message>
  <message>
   <source>the signal {signal} does not fit in message {message}</source>
   <translation>das Signal {signal} passt nicht in die Botschaft {message}</translation>
  </message>
  <message>
   <source>the signal {signal} of message {message} has no bits</source>
   <translation>das Signal {signal} der Botschaft {message} hat keine Bits</translation>
  </message>
  <message>
   <source>the signals {first} and {second} of message {message} overlap</source>
   <translation>die Signale {first} und {second} der Botschaft {message} überlappen sich</translation>
  </message>
  <message>
   <source>the signals {names} hold no valid number</source>
   <translation>die Signale {names} enthalten keine gültige Zahl</translation>
  </message>
  <message>
   <source>the speed hardly changed</source>
   <translation>die Geschwindigkeit änderte sich kaum</translation>
  </message>
  <message>
   <source>the speeds are in pulses per second, and the pulses of one revolution are not known</source>
   <translation>die Geschwindigkeiten sind in Impulsen je Sekunde, und die Impulse je Umdrehung sind nicht bekannt</translation>
  </message>
  <message>
   <source>the speeds are in {unit}, a unit of rotation, and the tyre radius is not known</source>
   <translation>die Geschwindigkeiten sind in {unit}, einer Einheit der Drehung, und der Reifenradius ist nicht bekannt</translation>
  </message>
  <message>
   <source>the speeds are recorded in steps of {step} m/s; small ripple is lost.</source>
   <translation>die Geschwindigkeiten sind in Stufen von {step} m/s aufgezeichnet; kleine Welligkeit geht verloren.</translation>
  </message>
  <message>
   <source>the system reports error {number}</source>
   <translation>das Betriebssystem meldet Fehler {number}</translation>
  </message>
  <message>
   <source>the table cannot be read: {reason}</source>
   <translation>die Tabelle ist nicht lesbar: {reason}</translation>
  </message>
  <message>
   <source>the table has no heading, so its columns have no names</source>
   <translation>die Tabelle hat keine Überschrift, ihre Spalten haben daher keine Namen</translation>
  </message>
  <message>
   <source>the table states {rows} rows of {columns} columns, more than can be read</source>
   <translation>die Tabelle nennt {rows} Zeilen mit {columns} Spalten, mehr als lesbar ist</translation>
  </message>
  <message>
   <source>the time went back {back} times; the samples were sorted into rising order.</source>
   <translation>die Zeit lief {back} Mal rückwärts; die Messwerte wurden aufsteigend geordnet.</translation>
  </message>
  <message>
   <source>the times of single edges (edge_times), a quarter of a minute or more of steady driving</source>
   <translation>die Zeiten einzelner Flanken (edge_times), eine Viertelminute oder mehr gleichmäßige Fahrt</translation>
  </message>
  <message>
   <source>the times of single edges from a drive in which the fault shows itself</source>
   <translation>die Zeiten einzelner Flanken aus einer Fahrt, in der sich der Fehler zeigt</translation>
  </message>
  <message>
   <source>the timing noise of the edges hides the pitch errors</source>
   <translation>das Zeitrauschen der Flanken verdeckt die Teilungsfehler</translation>
  </message>
  <message>
   <source>the turn was not found on this wheel and two others that have counters</source>
   <translation>die Umdrehung wurde an diesem Rad und zwei anderen mit Zählern nicht gefunden</translation>
  </message>
  <message>
   <source>the vehicle file cannot be read: {reason}</source>
   <translation>die Fahrzeugdatei ist nicht lesbar: {reason}</translation>
  </message>
  <message>
   <source>the vehicle file does not exist</source>
   <translation>die Fahrzeugdatei gibt es nicht</translation>
  </message>
  <message>
   <source>the wheel is right, the cause is not</source>
   <translation>das Rad stimmt, die Ursache nicht</translation>
  </message>
  <message>
   <source>the wheel reads nothing at any speed</source>
   <translation>das Rad zeigt bei keiner Geschwindigkeit etwas an</translation>
  </message>
  <message>
   <source>the wheel reads {off} % against the others</source>
   <translation>das Rad zeigt {off} % gegenüber den anderen</translation>
  </message>
  <message>
   <source>the wheel speeds came over {count} buses or channels ({buses}); only bus {best} was used. To use another one: --map FL={name}@{other} and so on.</source>
   <translation>die Radgeschwindigkeiten kamen über {count} Busse oder Kanäle ({buses}); nur Bus {best} wurde verwendet. Für einen anderen: --map FL={name}@{other} und so weiter.</translation>
  </message>
  <message>
   <source>the wheel speeds were chosen although {why}; check the sources shown.</source>
   <translation>die Radgeschwindigkeiten wurden gewählt, obwohl {why}; bitte die gezeigten Quellen prüfen.</translation>
  </message>
  <message>
   <source>the wheel was never seen to fall silent at one speed</source>
   <translation>das Rad verstummte nie bei einer bestimmten Geschwindigkeit</translation>
  </message>
  <message>
   <source>the wheels are mapped as was confirmed{when} for a log with the same signals: {wheels}{unit}. To read it otherwise: --map, or --no-memory; to forget it: wheel-triage mappings forget {fingerprint}.</source>
   <translation>die Räder sind zugeordnet, wie es{when} für eine Aufzeichnung mit denselben Signalen bestätigt wurde: {wheels}{unit}. Anders lesen: --map oder --no-memory; vergessen: wheel-triage mappings forget {fingerprint}.</translation>
  </message>
  <message>
   <source>the workbook cannot be read: {reason}</source>
   <translation>die Arbeitsmappe ist nicht lesbar: {reason}</translation>
  </message>
  <message>
   <source>the workbook cannot be unpacked: {reason}</source>
   <translation>die Arbeitsmappe lässt sich nicht entpacken: {reason}</translation>
  </message>
  <message>
   <source>the workbook unpacks to more than any recording does</source>
   <translation>die Arbeitsmappe entpackt sich auf mehr, als eine Aufzeichnung je hat</translation>
  </message>
  <message>
   <source>the {name} {value} cannot be used</source>
   <translation>{name}: {value} ist nicht verwendbar</translation>
  </message>
  <message>
   <source>their names are built differently</source>
   <translation>ihre Namen verschieden gebildet sind</translation>
  </message>
  <message>
   <source>there are no values</source>
   <translation>es gibt keine Werte</translation>
  </message>
  <message>
   <source>there is a single row of wheel speeds; a recording needs at least two</source>
   <translation>es gibt nur eine Zeile mit Radgeschwindigkeiten; eine Aufzeichnung braucht mindestens zwei</translation>
  </message>
  <message>
   <source>there is no cause {cause}</source>
   <translation>es gibt keine Ursache {cause}</translation>
  </message>
  <message>
   <source>there is no check {id}</source>
   <translation>es gibt keine Prüfung {id}</translation>
  </message>
  <message>
   <source>there is no check {name}</source>
   <translation>es gibt keine Prüfung {name}</translation>
  </message>
  <message>
   <source>there is no experience with a group {group}</source>
   <translation>es gibt keine Erfahrung mit einer Gruppe {group}</translation>
  </message>
  <message>
   <source>there is no list {list} of trouble codes</source>
   <translation>es gibt keine Liste {list} von Fehlercodes</translation>
  </message>
  <message>
   <source>there is no outcome {number}</source>
   <translation>es gibt kein Ergebnis {number}</translation>
  </message>
  <message>
   <source>there is no repair {id}</source>
   <translation>es gibt keine Reparatur {id}</translation>
  </message>
  <message>
   <source>there is no room left</source>
   <translation>es ist kein Platz mehr</translation>
  </message>
  <message>
   <source>there is no such file of answers</source>
   <translation>es gibt keine solche Datei mit Antworten</translation>
  </message>
  <message>
   <source>there is no such file or folder</source>
   <translation>eine solche Datei oder einen solchen Ordner gibt es nicht</translation>
  </message>
  <message>
   <source>there is no usable data frame in the log ({which})</source>
   <translation>die Aufzeichnung enthält keine brauchbare Datenbotschaft ({which})</translation>
  </message>
  <message>
   <source>there is no visible sheet {sheet}; it has {names}</source>
   <translation>es gibt kein sichtbares Blatt {sheet}; vorhanden sind {names}</translation>
  </message>
  <message>
   <source>there is nothing drawn</source>
   <translation>es ist nichts gezeichnet</translation>
  </message>
  <message>
   <source>there is nothing to save</source>
   <translation>es gibt nichts zu speichern</translation>
  </message>
  <message>
   <source>there is one of that name already</source>
   <translation>der Name ist schon vergeben</translation>
  </message>
  <message>
   <source>there is too little usable driving for a spectrum</source>
   <translation>zu wenig brauchbare Fahrt für ein Spektrum</translation>
  </message>
  <message>
   <source>this answer cannot be understood</source>
   <translation>diese Antwort ist nicht zu verstehen</translation>
  </message>
  <message>
   <source>this could not be worked out</source>
   <translation>das ließ sich nicht ermitteln</translation>
  </message>
  <message>
   <source>this database describes diagnostics and no frames</source>
   <translation>diese Datenbank beschreibt Diagnose und keine Botschaften</translation>
  </message>
  <message>
   <source>this file is given twice</source>
   <translation>diese Datei ist zweimal angegeben</translation>
  </message>
  <message>
   <source>this folder cannot be listed: {reason}</source>
   <translation>dieser Ordner ist nicht aufzulisten: {reason}</translation>
  </message>
  <message>
   <source>this folder cannot be made: {reason}</source>
   <translation>dieser Ordner ist nicht anzulegen: {reason}</translation>
  </message>
  <message>
   <source>this folder holds more than {most} files</source>
   <translation>dieser Ordner enthält mehr als {most} Dateien</translation>
  </message>
  <message>
   <source>this folder holds no recording</source>
   <translation>dieser Ordner enthält keine Aufzeichnung</translation>
  </message>
  <message>
   <source>this is a device or a pipe, not a file</source>
   <translation>das ist ein Gerät oder eine Pipe, keine Datei</translation>
  </message>
  <message>
   <source>this is a folder</source>
   <translation>das ist ein Ordner</translation>
  </message>
  <message>
   <source>this is a folder or a device, not a file</source>
   <translation>das ist ein Ordner oder ein Gerät, keine Datei</translation>
  </message>
  <message>
   <source>this is a tar archive</source>
   <translation>das ist ein tar-Archiv</translation>
  </message>
  <message>
   <source>this is an archive inside an archive</source>
   <translation>das ist ein Archiv in einem Archiv</translation>
  </message>
  <message>
   <source>this is no JSON: no exercise file, or a damaged one</source>
   <translation>das ist kein JSON: keine Übungsdatei oder eine beschädigte</translation>
  </message>
  <message>
   <source>this is no class sheet: it has other columns</source>
   <translation>das ist keine Klassenliste: sie hat andere Spalten</translation>
  </message>
  <message>
   <source>this is no exercise file</source>
   <translation>das ist keine Übungsdatei</translation>
  </message>
  <message>
   <source>this is no file</source>
   <translation>das ist keine Datei</translation>
  </message>
  <message>
   <source>this is no file name</source>
   <translation>das ist kein Dateiname</translation>
  </message>
  <message>
   <source>this is no file of answers (schema {schema})</source>
   <translation>das ist keine Datei mit Antworten (Schema {schema})</translation>
  </message>
  <message>
   <source>this is no file of experience (schema {schema})</source>
   <translation>das ist keine Datei mit Erfahrungen (Schema {schema})</translation>
  </message>
  <message>
   <source>this is no kind of picture that can be made</source>
   <translation>diese Art Bild kann nicht erzeugt werden</translation>
  </message>
  <message>
   <source>this is no list of recordings opened of late</source>
   <translation>das ist keine Liste zuletzt geöffneter Aufzeichnungen</translation>
  </message>
  <message>
   <source>this is no readable signal database: {reason}</source>
   <translation>das ist keine lesbare Signaldatenbank: {reason}</translation>
  </message>
  <message>
   <source>this is no recording that can be read: {what}</source>
   <translation>das ist keine lesbare Aufzeichnung: {what}</translation>
  </message>
  <message>
   <source>this is no table: {reason}</source>
   <translation>das ist keine Tabelle: {reason}</translation>
  </message>
  <message>
   <source>this is no text: no class sheet</source>
   <translation>das ist kein Text: keine Klassenliste</translation>
  </message>
  <message>
   <source>this is no text: no exercise file</source>
   <translation>das ist kein Text: keine Übungsdatei</translation>
  </message>
  <message>
   <source>this is still being worked out</source>
   <translation>das wird noch ermittelt</translation>
  </message>
  <message>
   <source>this is {what}</source>
   <translation>das ist {what}</translation>
  </message>
  <message>
   <source>this mapping could not be remembered. {error}</source>
   <translation>diese Zuordnung ließ sich nicht merken. {error}</translation>
  </message>
  <message>
   <source>this mapping is remembered for recordings with the same signals; to forget it: wheel-triage mappings forget {fingerprint}.</source>
   <translation>diese Zuordnung ist für Aufzeichnungen mit denselben Signalen gemerkt; vergessen: wheel-triage mappings forget {fingerprint}.</translation>
  </message>
  <message>
   <source>this outcome cannot be understood</source>
   <translation>dieses Ergebnis ist nicht zu verstehen</translation>
  </message>
  <message>
   <source>this part is no plain XML, as workbooks have it</source>
   <translation>dieser Teil ist kein einfaches XML, wie Arbeitsmappen es haben</translation>
  </message>
  <message>
   <source>this user has no right to it</source>
   <translation>dieser Benutzer hat kein Recht dazu</translation>
  </message>
  <message>
   <source>three or more curves, recorded with a yaw rate or steering angle whose positive side is stated</source>
   <translation>drei Kurven oder mehr, aufgezeichnet mit einer Gierrate oder einem Lenkwinkel mit angegebener positiver Seite</translation>
  </message>
  <message>
   <source>three slow stops and pull-aways</source>
   <translation>drei langsame Halte mit Anfahren</translation>
  </message>
  <message>
   <source>three slow stops and pull-aways, rolling at walking pace for some seconds each</source>
   <translation>drei langsame Halte mit Anfahren, jedes Mal einige Sekunden im Schritttempo rollen</translation>
  </message>
  <message>
   <source>three times</source>
   <translation>dreimal</translation>
  </message>
  <message>
   <source>tight curves to both sides</source>
   <translation>enge Kurven nach beiden Seiten</translation>
  </message>
  <message>
   <source>tight curves to both sides, and a minute above 30 km/h recorded at 50 Hz or faster</source>
   <translation>enge Kurven nach beiden Seiten und eine Minute über 30 km/h, aufgezeichnet mit 50 Hz oder schneller</translation>
  </message>
  <message>
   <source>tight turns to both sides, and straight driving as slow, with the fault in it</source>
   <translation>enges Wenden nach beiden Seiten und ebenso langsame Geradeausfahrt, mit dem Fehler darin</translation>
  </message>
  <message>
   <source>too few brief losses to place on the ring</source>
   <translation>zu wenige kurze Ausfälle, um sie am Ring zu verorten</translation>
  </message>
  <message>
   <source>too few curves to check the wheels against each other</source>
   <translation>zu wenige Kurven, um die Räder gegeneinander zu prüfen</translation>
  </message>
  <message>
   <source>too few curves to compare the sides</source>
   <translation>zu wenige Kurven, um die Seiten zu vergleichen</translation>
  </message>
  <message>
   <source>too few drop-outs to see a pattern in time</source>
   <translation>zu wenige Ausfälle, um ein zeitliches Muster zu sehen</translation>
  </message>
  <message>
   <source>too few even stretches with samples close together</source>
   <translation>zu wenige ebene Abschnitte mit dicht liegenden Messwerten</translation>
  </message>
  <message>
   <source>too few lone dips to see whether they cluster</source>
   <translation>zu wenige einzelne Einbrüche, um Häufungen zu sehen</translation>
  </message>
  <message>
   <source>too few losses that follow each other within some turns</source>
   <translation>zu wenige Ausfälle, die innerhalb einiger Umdrehungen aufeinander folgen</translation>
  </message>
  <message>
   <source>too few losses to compare speeds</source>
   <translation>zu wenige Ausfälle, um Geschwindigkeiten zu vergleichen</translation>
  </message>
  <message>
   <source>too few samples in motion</source>
   <translation>zu wenige Messwerte in Bewegung</translation>
  </message>
  <message>
   <source>too few whole turns in which the edges follow each other steadily</source>
   <translation>zu wenige ganze Umdrehungen, in denen die Flanken stetig aufeinander folgen</translation>
  </message>
  <message>
   <source>too large for a class sheet</source>
   <translation>zu groß für eine Klassenliste</translation>
  </message>
  <message>
   <source>too little disturbance to compare parts of the ring</source>
   <translation>zu wenig Störung, um Teile des Ringes zu vergleichen</translation>
  </message>
  <message>
   <source>too little driving ({seconds} s)</source>
   <translation>zu wenig Fahrt ({seconds} s)</translation>
  </message>
  <message>
   <source>too little fairly straight driving above 15 km/h</source>
   <translation>zu wenig annähernd gerade Fahrt über 15 km/h</translation>
  </message>
  <message>
   <source>too little straight driving above 15 km/h</source>
   <translation>zu wenig Geradeausfahrt über 15 km/h</translation>
  </message>
  <message>
   <source>too little usable driving to see how long a turn is</source>
   <translation>zu wenig brauchbare Fahrt, um zu sehen, wie lang eine Umdrehung ist</translation>
  </message>
  <message>
   <source>too many files are open</source>
   <translation>es sind zu viele Dateien offen</translation>
  </message>
  <message>
   <source>tools: {tools}</source>
   <translation>Werkzeug: {tools}</translation>
  </message>
  <message>
   <source>turning the wheels</source>
   <translation>Räder drehen</translation>
  </message>
  <message>
   <source>twice</source>
   <translation>zweimal</translation>
  </message>
  <message>
   <source>two answers to {id} at {wheel}: {earlier} and {later}</source>
   <translation>zwei Antworten auf {id} bei {wheel}: {earlier} und {later}</translation>
  </message>
  <message>
   <source>under 1 %</source>
   <translation>unter 1 %</translation>
  </message>
  <message>
   <source>under {factor} times</source>
   <translation>weniger als {factor}-mal</translation>
  </message>
  <message>
   <source>unit</source>
   <translation>Einheit</translation>
  </message>
  <message>
   <source>unknown field {field}</source>
   <translation>unbekanntes Feld {field}</translation>
  </message>
  <message>
   <source>unknown kind or place</source>
   <translation>unbekannte Art oder Stelle</translation>
  </message>
  <message>
   <source>unknown unit {unit}</source>
   <translation>unbekannte Einheit {unit}</translation>
  </message>
  <message>
   <source>unpacks to more than {most} times its size, as no recording does</source>
   <translation>entpackt sich auf mehr als das {most}-fache, wie keine Aufzeichnung</translation>
  </message>
  <message>
   <source>unreadable lines</source>
   <translation>unlesbare Zeilen</translation>
  </message>
  <message>
   <source>unreadable rows</source>
   <translation>unlesbare Tabellenzeilen</translation>
  </message>
  <message>
   <source>value frozen</source>
   <translation>steht fest</translation>
  </message>
  <message>
   <source>wheel and cause, or one of the two</source>
   <translation>Rad und Ursache, oder eines von beiden</translation>
  </message>
  <message>
   <source>which names speeds in it</source>
   <translation>die darin Geschwindigkeiten nennt</translation>
  </message>
  <message>
   <source>which was given first</source>
   <translation>die zuerst angegeben wurde</translation>
  </message>
  <message>
   <source>whole vehicle</source>
   <translation>Fahrzeug</translation>
  </message>
  <message>
   <source>{answers} from {file}.</source>
   <translation>{answers}, aus {file}.</translation>
  </message>
  <message>
   <source>{answer} is no answer</source>
   <translation>{answer} ist keine Antwort</translation>
  </message>
  <message>
   <source>{arrow} from {share}</source>
   <translation>{arrow} von {share}</translation>
  </message>
  <message>
   <source>{backward}: the speed is below zero whenever the wheel turns; its sign was turned round.</source>
   <translation>{backward}: die Geschwindigkeit liegt unter null, wann immer das Rad dreht; das Vorzeichen wurde umgedreht.</translation>
  </message>
  <message>
   <source>{car}, drive {n}</source>
   <translation>{car}, Fahrt {n}</translation>
  </message>
  <message>
   <source>{cause} cannot sit at {corner}</source>
   <translation>{cause} kann nicht bei {corner} sitzen</translation>
  </message>
  <message>
   <source>{cause}, any wheel</source>
   <translation>{cause}, irgendein Rad</translation>
  </message>
  <message>
   <source>{centre}° ({width}° wide)</source>
   <translation>{centre}° ({width}° breit)</translation>
  </message>
  <message>
   <source>{check} ({wheel}), {minutes} min ({gain} bit).</source>
   <translation>{check} ({wheel}), {minutes} min ({gain} bit).</translation>
  </message>
  <message>
   <source>{check} is not done at {place}</source>
   <translation>{check} wird nicht bei {place} gemacht</translation>
  </message>
  <message>
   <source>{check} is not what is asked now</source>
   <translation>nach {check} wird jetzt nicht gefragt</translation>
  </message>
  <message>
   <source>{check} was answered before</source>
   <translation>{check} ist schon beantwortet</translation>
  </message>
  <message>
   <source>{check}@FL={outcomes}</source>
   <translation>{check}@FL={outcomes}</translation>
  </message>
  <message>
   <source>{claim} at {share}</source>
   <translation>{claim} mit {share}</translation>
  </message>
  <message>
   <source>{claim} {moves} {before} to {after}</source>
   <translation>{claim} {moves} {before} auf {after}</translation>
  </message>
  <message>
   <source>{code} alone does not name a wheel</source>
   <translation>{code} allein nennt kein Rad</translation>
  </message>
  <message>
   <source>{code}{failure} by the list {family}</source>
   <translation>{code}{failure} nach der Liste {family}</translation>
  </message>
  <message>
   <source>{corner}: only {rate} samples a second; its short losses and ripple cannot be seen.</source>
   <translation>{corner}: nur {rate} Messwerte je Sekunde; kurze Ausfälle und Welligkeit dieses Rades sind nicht zu sehen.</translation>
  </message>
  <message>
   <source>{corner}: the signal {signal} holds no valid sample at all.</source>
   <translation>{corner}: das Signal {signal} enthält keinen einzigen gültigen Messwert.</translation>
  </message>
  <message>
   <source>{corner}: {count} samples are missing or marked invalid (not available) and were left out.</source>
   <translation>{corner}: {count} Messwerte fehlen oder sind als ungültig (nicht verfügbar) markiert und wurden weggelassen.</translation>
  </message>
  <message>
   <source>{count} cells instead of {count2}</source>
   <translation>{count} Zellen statt {count2}</translation>
  </message>
  <message>
   <source>{detail}. See “{tab}” for the driving that would help</source>
   <translation>{detail}. Unter „{tab}“ steht, welche Fahrt helfen würde</translation>
  </message>
  <message>
   <source>{dips} in which it read briefly too low</source>
   <translation>{dips}, bei denen es kurz zu wenig zeigte</translation>
  </message>
  <message>
   <source>{drive} ({gain} bit).</source>
   <translation>{drive} ({gain} bit).</translation>
  </message>
  <message>
   <source>{drop_outs} of the {wheel} wheel, {lost} s in all</source>
   <translation>{drop_outs} am Rad {wheel}, zusammen {lost} s</translation>
  </message>
  <message>
   <source>{error} New answers are kept in {file}.</source>
   <translation>{error} Neue Antworten stehen in {file}.</translation>
  </message>
  <message>
   <source>{factor} times</source>
   <translation>{factor}-mal</translation>
  </message>
  <message>
   <source>{factor} times ({low} to {high})</source>
   <translation>{factor}-mal ({low} bis {high})</translation>
  </message>
  <message>
   <source>{field} cannot be understood</source>
   <translation>{field} ist nicht zu verstehen</translation>
  </message>
  <message>
   <source>{field} must be a number between {low} and {high}</source>
   <translation>{field} muss eine Zahl zwischen {low} und {high} sein</translation>
  </message>
  <message>
   <source>{field} must be one of {values}</source>
   <translation>{field} muss eines von {values} sein</translation>
  </message>
  <message>
   <source>{file} and {file2} describe {identifier} differently ({name} and {name2}); {used}, {why}, was used.</source>
   <translation>{file} und {file2} beschreiben {identifier} verschieden ({name} und {name2}); {used}, {why}, wurde verwendet.</translation>
  </message>
  <message>
   <source>{file}: how many edges make a turn does not show; {edges} were assumed. State pulses_per_rev in a vehicle file and give it with --vehicle.</source>
   <translation>{file}: wie viele Flanken eine Umdrehung hat, zeigt sich nicht; {edges} wurden angenommen. pulses_per_rev in einer Fahrzeugdatei angeben und mit --vehicle nennen.</translation>
  </message>
  <message>
   <source>{file}: message {name} ({identifier}) has a 29-bit identifier without the extended flag; it was read as extended ({count} messages).</source>
   <translation>{file}: die Botschaft {name} ({identifier}) hat eine 29-Bit-Kennung ohne das Kennzeichen „erweitert“; sie wurde als erweitert gelesen ({count} Botschaften).</translation>
  </message>
  <message>
   <source>{file}: several sheets hold tables ({names}); {name}, the longest, was read. To read another one, name it with --sheet, or save it as a file of its own.</source>
   <translation>{file}: mehrere Blätter enthalten Tabellen ({names}); {name}, das längste, wurde gelesen. Für ein anderes mit --sheet nennen oder als eigene Datei speichern.</translation>
  </message>
  <message>
   <source>{file}: skipped as they carry no speed: {what}.</source>
   <translation>{file}: übersprungen, da ohne Geschwindigkeit: {what}.</translation>
  </message>
  <message>
   <source>{file}: the circumference of the wheels is not known; {circumference_m} m were assumed, so that speeds are right only in proportion ({edges} edges a turn, {how}). State it with --tyre-radius or --vehicle.</source>
   <translation>{file}: der Umfang der Räder ist nicht bekannt; {circumference_m} m wurden angenommen, Geschwindigkeiten stimmen daher nur im Verhältnis ({edges} Flanken je Umdrehung, {how}). Mit --tyre-radius oder --vehicle angeben.</translation>
  </message>
  <message>
   <source>{file}: the clock started anew {restart_count} times; the times were joined.</source>
   <translation>{file}: die Uhr begann {restart_count} Mal neu; die Zeiten wurden aneinandergefügt.</translation>
  </message>
  <message>
   <source>{file}: the column {name} holds the distances of the rows; they were added up to a time{lost}.</source>
   <translation>{file}: die Spalte {name} enthält die Abstände der Zeilen; sie wurden zu einer Zeit aufaddiert{lost}.</translation>
  </message>
  <message>
   <source>{file}: the counter of the clock ran over {wrap_count} times; the times run on.</source>
   <translation>{file}: der Zähler der Uhr lief {wrap_count} Mal über; die Zeiten laufen weiter.</translation>
  </message>
  <message>
   <source>{file}: the database has a fault that was passed over: {reason}.</source>
   <translation>{file}: die Datenbank hat einen Fehler, der übergangen wurde: {reason}.</translation>
  </message>
  <message>
   <source>{file}: the speeds have no unit; {unit} was assumed ({why}). Use --unit.</source>
   <translation>{file}: die Geschwindigkeiten haben keine Einheit; {unit} wurde angenommen ({why}). Sonst --unit.</translation>
  </message>
  <message>
   <source>{file}: the time has no unit; rows {usual} apart were taken for {guess}.</source>
   <translation>{file}: die Zeit hat keine Einheit; Zeilen im Abstand {usual} wurden als {guess} genommen.</translation>
  </message>
  <message>
   <source>{file}: the time is written in whole seconds; {moved} rows that share a stamp were spread evenly over its second, so losses shorter than a second may be misplaced.</source>
   <translation>{file}: die Zeit steht in ganzen Sekunden; {moved} Zeilen mit gemeinsamem Stempel wurden gleichmäßig über ihre Sekunde verteilt, Ausfälle unter einer Sekunde können daher verschoben sein.</translation>
  </message>
  <message>
   <source>{file}: the vehicle file states {known} pulses a turn, but the edges repeat after {edges}; the latter was taken.</source>
   <translation>{file}: die Fahrzeugdatei nennt {known} Impulse je Umdrehung, die Flanken wiederholen sich aber nach {edges}; dies wurde genommen.</translation>
  </message>
  <message>
   <source>{file}: the wheels reach {speed} km/h, which is implausible: the unit ({unit}) or the factor of the signals is wrong. The numbers are used as written; state the right unit with --unit.</source>
   <translation>{file}: die Räder erreichen {speed} km/h, das ist unplausibel: Einheit ({unit}) oder Faktor der Signale ist falsch. Die Zahlen werden verwendet, wie sie dastehen; mit --unit die richtige Einheit angeben.</translation>
  </message>
  <message>
   <source>{file}: the wheels read {ratio} times the vehicle speed {source}{because}. The numbers are used as written; state the right unit with --unit.</source>
   <translation>{file}: die Räder zeigen das {ratio}-fache der Fahrzeuggeschwindigkeit {source}{because}. Die Zahlen werden verwendet, wie sie dastehen; mit --unit die richtige Einheit angeben.</translation>
  </message>
  <message>
   <source>{file}: {echoes} frames stand twice in the log, once sent and once as their own echo; the repeated ones were left out.</source>
   <translation>{file}: {echoes} Botschaften stehen doppelt in der Aufzeichnung, einmal gesendet und einmal als ihr eigenes Echo; die Wiederholungen wurden weggelassen.</translation>
  </message>
  <message>
   <source>{file}: {stray_count} time stamps lie far from all others and were left out.</source>
   <translation>{file}: {stray_count} Zeitstempel liegen weit von allen anderen und wurden weggelassen.</translation>
  </message>
  <message>
   <source>{file}: {which} rises steadily and was taken for the time.</source>
   <translation>{file}: {which} steigt stetig und wurde als Zeit genommen.</translation>
  </message>
  <message>
   <source>{first} and {n} more</source>
   <translation>{first} und {n} weitere</translation>
  </message>
  <message>
   <source>{first} or {second}?</source>
   <translation>{first} oder {second}?</translation>
  </message>
  <message>
   <source>{gaps} without a sample of any wheel, {total} s in total, the longest {length_s} s at {begin_s} s: they are gaps of the recording, not losses of one wheel.</source>
   <translation>{gaps} ohne einen Messwert irgendeines Rades, zusammen {total} s, die längste {length_s} s bei {begin_s} s: das sind Lücken der Aufzeichnung, keine Ausfälle eines Rades.</translation>
  </message>
  <message>
   <source>{kind}, {n} parts</source>
   <translation>{kind}, {n} Teile</translation>
  </message>
  <message>
   <source>{length} recorded</source>
   <translation>{length} aufgezeichnet</translation>
  </message>
  <message>
   <source>{losses} At {places} ({lost} s) all wheels are missing: not this wheel's fault.</source>
   <translation>{losses} An {places} ({lost} s) fehlen alle Räder: das liegt nicht an diesem Rad.</translation>
  </message>
  <message>
   <source>{minutes} min and {money} to a car that is right; ideal order {ideal_minutes} min and {ideal_money}</source>
   <translation>{minutes} min und {money} bis zum heilen Fahrzeug; ideale Reihenfolge {ideal_minutes} min und {ideal_money}</translation>
  </message>
  <message>
   <source>{minutes} min, expected gain {gain} bit</source>
   <translation>{minutes} min, erwarteter Gewinn {gain} bit</translation>
  </message>
  <message>
   <source>{money}; parts fitted in vain: {parts}</source>
   <translation>{money}; vergeblich eingebaute Teile: {parts}</translation>
  </message>
  <message>
   <source>{names} and {count} more</source>
   <translation>{names} und {count} weitere</translation>
  </message>
  <message>
   <source>{name} is no outcome of the check {id}</source>
   <translation>{name} ist kein Ergebnis der Prüfung {id}</translation>
  </message>
  <message>
   <source>{name} is no wheel</source>
   <translation>{name} ist kein Rad</translation>
  </message>
  <message>
   <source>{name}: damaged in {skipped} places, the first in the container at byte {first}; the rest of that container was skipped and its frames are lost.</source>
   <translation>{name}: an {skipped} Stellen beschädigt, zuerst im Behälter bei Byte {first}; der Rest dieses Behälters wurde übersprungen, seine Botschaften fehlen.</translation>
  </message>
  <message>
   <source>{name}: it cannot be done at the {sensor} sensors of this car</source>
   <translation>{name}: geht nicht an den Sensoren dieses Fahrzeugs ({sensor})</translation>
  </message>
  <message>
   <source>{name}: it is not said at which wheel</source>
   <translation>{name}: es fehlt, an welchem Rad</translation>
  </message>
  <message>
   <source>{name}: numbers are written with a decimal comma.</source>
   <translation>{name}: Zahlen sind mit Dezimalkomma geschrieben.</translation>
  </message>
  <message>
   <source>{name}: passed over, as these are no recordings: {passed}.</source>
   <translation>{name}: übergangen, da es keine Aufzeichnungen sind: {passed}.</translation>
  </message>
  <message>
   <source>{name}: reading stopped in the middle ({reason}); what was read was used.</source>
   <translation>{name}: das Lesen brach mittendrin ab ({reason}); was gelesen war, wurde verwendet.</translation>
  </message>
  <message>
   <source>{name}: stretches of zero bytes, as left when a recorder loses its power, were left out; what stood there is lost.</source>
   <translation>{name}: Strecken aus Nullbytes, wie sie bleiben, wenn ein Aufzeichnungsgerät den Strom verliert, wurden weggelassen; was dort stand, ist verloren.</translation>
  </message>
  <message>
   <source>{name}: the edges have no unit of time; by their distance {unit} was taken.</source>
   <translation>{name}: die Flanken haben keine Zeiteinheit; nach ihrem Abstand wurde {unit} genommen.</translation>
  </message>
  <message>
   <source>{name}: the file grew while it was read; what came later was left out.</source>
   <translation>{name}: die Datei wuchs, während sie gelesen wurde; was später kam, wurde weggelassen.</translation>
  </message>
  <message>
   <source>{name}: the packed file is damaged or cut off; what could be unpacked was used.</source>
   <translation>{name}: die gepackte Datei ist beschädigt oder abgeschnitten; was sich entpacken ließ, wurde verwendet.</translation>
  </message>
  <message>
   <source>{name}: the recording is incomplete: {what} ({place}); everything before it was used.</source>
   <translation>{name}: die Aufzeichnung ist unvollständig: {what} ({place}); alles davor wurde verwendet.</translation>
  </message>
  <message>
   <source>{name}: {skipped} lines with another number of cells were skipped.</source>
   <translation>{name}: {skipped} Zeilen mit anderer Zellenzahl wurden übersprungen.</translation>
  </message>
  <message>
   <source>{now} of {end}</source>
   <translation>{now} von {end}</translation>
  </message>
  <message>
   <source>{number} times a minute</source>
   <translation>{number}-mal je Minute</translation>
  </message>
  <message>
   <source>{n} answers</source>
   <translation>{n} Antworten</translation>
  </message>
  <message>
   <source>{n} cars</source>
   <translation>{n} Fahrzeuge</translation>
  </message>
  <message>
   <source>{n} dips</source>
   <translation>{n} Einbrüche</translation>
  </message>
  <message>
   <source>{n} drop-outs</source>
   <translation>{n} Ausfälle</translation>
  </message>
  <message>
   <source>{n} earlier answers were read</source>
   <translation>{n} frühere Antworten wurden gelesen</translation>
  </message>
  <message>
   <source>{n} gaps</source>
   <translation>{n} Lücken</translation>
  </message>
  <message>
   <source>{n} or more</source>
   <translation>{n} oder mehr</translation>
  </message>
  <message>
   <source>{n} places</source>
   <translation>{n} Stellen</translation>
  </message>
  <message>
   <source>{n} poles; the car expects {expected}</source>
   <translation>{n} Pole; das Fahrzeug erwartet {expected}</translation>
  </message>
  <message>
   <source>{n} quantities</source>
   <translation>{n} Größen</translation>
  </message>
  <message>
   <source>{n} rows</source>
   <translation>{n} Zeilen</translation>
  </message>
  <message>
   <source>{n} silences</source>
   <translation>{n} Mal Verstummen</translation>
  </message>
  <message>
   <source>{n} times</source>
   <translation>{n} Mal</translation>
  </message>
  <message>
   <source>{n} units of money</source>
   <translation>{n} Geldeinheiten</translation>
  </message>
  <message>
   <source>{over} (at least {low})</source>
   <translation>{over} (mindestens {low})</translation>
  </message>
  <message>
   <source>{problem}; signals in the log: {shown}{more}</source>
   <translation>{problem}; Signale in der Aufzeichnung: {shown}{more}</translation>
  </message>
  <message>
   <source>{rate} rows/s</source>
   <translation>{rate} Zeilen/s</translation>
  </message>
  <message>
   <source>{reached} of {most}</source>
   <translation>{reached} von {most}</translation>
  </message>
  <message>
   <source>{reason}, in line {line}</source>
   <translation>{reason}, in Zeile {line}</translation>
  </message>
  <message>
   <source>{reason}, in line {line}, column {column}</source>
   <translation>{reason}, in Zeile {line}, Spalte {column}</translation>
  </message>
  <message>
   <source>{repeated} time stamps are repeated; the first valid sample of each instant was kept.</source>
   <translation>{repeated} Zeitstempel wiederholen sich; je Zeitpunkt wurde der erste gültige Messwert behalten.</translation>
  </message>
  <message>
   <source>{rows} rows are more than a table can hold</source>
   <translation>{rows} Zeilen sind mehr, als eine Tabelle fasst</translation>
  </message>
  <message>
   <source>{share} of the ripple repeats with the angle.</source>
   <translation>{share} der Welligkeit wiederholen sich mit dem Winkel.</translation>
  </message>
  <message>
   <source>{silences} below its lowest speed</source>
   <translation>{silences} unterhalb seiner Mindestgeschwindigkeit</translation>
  </message>
  <message>
   <source>{source} could be {role}, but its unit is not known; it was left out.</source>
   <translation>{source} könnte {role} sein, aber die Einheit ist nicht bekannt; der Kanal wurde weggelassen.</translation>
  </message>
  <message>
   <source>{source} never changes although the car brakes; it was left out.</source>
   <translation>{source} ändert sich nie, obwohl das Fahrzeug bremst; der Kanal wurde weggelassen.</translation>
  </message>
  <message>
   <source>{source} never changes although the car drives; it was left out.</source>
   <translation>{source} ändert sich nie, obwohl das Fahrzeug fährt; der Kanal wurde weggelassen.</translation>
  </message>
  <message>
   <source>{source} never changes although the car drives; it was {what}.</source>
   <translation>{source} ändert sich nie, obwohl das Fahrzeug fährt; der Kanal wurde {what}.</translation>
  </message>
  <message>
   <source>{source} started anew {times}, first at {at} s; the pulses that the speed tells were put in there.</source>
   <translation>{source} begann {times} neu, zuerst bei {at} s; dort wurden die Impulse eingesetzt, die die Geschwindigkeit angibt.</translation>
  </message>
  <message>
   <source>{source}: by the wheels' own {witness} this channel is positive {other}; its sign was turned round.</source>
   <translation>{source}: nach {witness} der Räder ist dieser Kanal {other} positiv; sein Vorzeichen wurde umgedreht.</translation>
  </message>
  <message>
   <source>{source}: in {gaps} it may have overflowed more often than the speed can tell (modulus {modulus}); the most probable number was taken.</source>
   <translation>{source}: in {gaps} kann der Zähler öfter übergelaufen sein, als die Geschwindigkeit zeigt (Modulus {modulus}); die wahrscheinlichste Zahl wurde genommen.</translation>
  </message>
  <message>
   <source>{source}: the wheels change speed the other way than this channel says.</source>
   <translation>{source}: die Räder ändern ihre Geschwindigkeit anders herum, als dieser Kanal angibt.</translation>
  </message>
  <message>
   <source>{source}: the wheels turn the other way than this channel says, whose positive side is stated; left and right may be exchanged, or the statement is wrong.</source>
   <translation>{source}: die Räder drehen anders herum, als dieser Kanal mit angegebener positiver Seite sagt; links und rechts können vertauscht sein, oder die Angabe ist falsch.</translation>
  </message>
  <message>
   <source>{spent}. Now: {open}.</source>
   <translation>{spent}. Jetzt: {open}.</translation>
  </message>
  <message>
   <source>{statement} (also {brought}, which comes with it).</source>
   <translation>{statement} (auch {brought}, was damit einhergeht).</translation>
  </message>
  <message>
   <source>{statement} That points to: {points}. {against_it} All else leads to expect this answer in {share} of cases: check the corner, and repeat the check.</source>
   <translation>{statement} Das deutet auf: {points}. {against_it} Alles Übrige lässt diese Antwort in {share} der Fälle erwarten: prüfen, ob die Radecke stimmt, und die Prüfung wiederholen.</translation>
  </message>
  <message>
   <source>{step}, {minutes} min</source>
   <translation>{step}, {minutes} min</translation>
  </message>
  <message>
   <source>{strip} in {text} is no corner</source>
   <translation>{strip} in {text} ist keine Radecke</translation>
  </message>
  <message>
   <source>{text} for the check {id} {reason}</source>
   <translation>{text} für die Prüfung {id} {reason}</translation>
  </message>
  <message>
   <source>{text} is no observation</source>
   <translation>{text} ist keine Beobachtung</translation>
  </message>
  <message>
   <source>{time} s taken off, so that the log starts at 0</source>
   <translation>{time} s abgezogen, damit die Aufzeichnung bei 0 beginnt</translation>
  </message>
  <message>
   <source>{told} With a factor of {factors} they would be plausible.</source>
   <translation>{told} Mit einem Faktor von {factors} wären sie plausibel.</translation>
  </message>
  <message>
   <source>{told} answered{skipped}; doubt left {doubt} bit; expected cost to a proven repair {money}</source>
   <translation>{told} beantwortet{skipped}; verbleibender Zweifel {doubt} bit; erwartete Kosten bis zur nachgewiesenen Reparatur {money}</translation>
  </message>
  <message>
   <source>{under} (at most {high})</source>
   <translation>{under} (höchstens {high})</translation>
  </message>
  <message>
   <source>{unit} to m/s</source>
   <translation>{unit} in m/s</translation>
  </message>
  <message>
   <source>{value} (maker's limit {limit} {unit})</source>
   <translation>{value} (Grenzwert des Herstellers {limit} {unit})</translation>
  </message>
  <message>
   <source>{value}, or 0.7 V across 100 ohm</source>
   <translation>{value} oder 0.7 V across 100 ohm</translation>
  </message>
  <message>
   <source>{verb} more than {value} GB</source>
   <translation>{verb} mehr als {value} GB</translation>
  </message>
  <message>
   <source>{what} Its sign was turned round to fit the wheels.</source>
   <translation>{what} Das Vorzeichen wurde passend zu den Rädern umgedreht.</translation>
  </message>
  <message>
   <source>{what} Read from {source}.</source>
   <translation>{what} Gelesen aus {source}.</translation>
  </message>
  <message>
   <source>{wheel} in {list}</source>
   <translation>{wheel} in {list}</translation>
  </message>
  <message>
   <source>{wheel} mostly reads more than {speed} km/h, as no car drives: the unit or the factor of the speeds is wrong</source>
   <translation>{wheel} zeigt meist mehr als {speed} km/h, so schnell fährt kein Auto: Einheit oder Faktor der Geschwindigkeiten ist falsch</translation>
  </message>
  <message>
   <source>{words} is the {meant} wheel, not {given}</source>
   <translation>{words} meint das Rad {meant}, nicht {given}</translation>
  </message>
  <message>
   <source>“{name}” cannot be {value}; it is {allowed}.</source>
   <translation>„{name}“ kann nicht {value} sein; möglich ist {allowed}.</translation>
  </message>
  <message>
   <source>“{outcome}” ({share} likely) would put first: {leader}</source>
   <translation>„{outcome}“ ({share} wahrscheinlich) brächte nach vorne: {leader}</translation>
  </message>
 </context>
</TS>
