<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de_DE" sourcelanguage="en">
<context>
    <name>AeratorForm</name>
    <message><source>Air each, %1</source><translation>Luft je Stück, %1</translation></message>
    <message><source>Diffusers</source><translation>Belüfter</translation></message>
    <message><source>Depth, %1</source><translation>Tiefe, %1</translation></message>
    <message><source>Bubbles, %1</source><translation>Blasen, %1</translation></message>
    <message><source>Power, %1</source><translation>Leistung, %1</translation></message>
    <message><source>not known</source><translation>nicht bekannt</translation></message>
    <message><source>Net share</source><translation>Nettoanteil</translation></message>
    <message><source>Add an Aerator</source><translation>Belüftung hinzufügen</translation></message>
    <message><source>Add an aerator</source><translation>Belüftung hinzufügen</translation></message>
</context>
<context>
    <name>BudgetView</name>
    <message><source>photosynthesis</source><translation>Photosynthese</translation></message>
    <message><source>breathing of the water</source><translation>Atmung des Wassers</translation></message>
    <message><source>breathing of the fish</source><translation>Atmung der Fische</translation></message>
    <message><source>mud</source><translation>Schlamm</translation></message>
    <message><source>oxygen debt</source><translation>Sauerstoffschuld</translation></message>
    <message><source>exchange at the surface</source><translation>Austausch an der Oberfläche</translation></message>
    <message><source>bubbles</source><translation>Blasen</translation></message>
    <message><source>surface aerator</source><translation>Oberflächenbelüfter</translation></message>
    <message><source>inflow</source><translation>Zufluss</translation></message>
    <message><source>change of the day</source><translation>Änderung des Tages</translation></message>
    <message><source>oxygen, kg a day</source><translation>Sauerstoff, kg am Tag</translation></message>
</context>
<context>
    <name>DawnLowsPlot</name>
    <message><source>low of each night, mg/L</source><translation>Tiefstwert jeder Nacht, mg/L</translation></message>
    <message><source>night</source><translation>Nacht</translation></message>
    <message><source>Low of each night in mg/L.</source><translation>Tiefstwert jeder Nacht in mg/L.</translation></message>
    <message><source>Low of each night</source><translation>Tiefstwert jeder Nacht</translation></message>
    <message><source>%1 mg/L at %2  %3</source><translation>%1 mg/L um %2  %3</translation></message>
</context>
<context>
    <name>DayAxis</name>
    <message><source>air, °C</source><translation>Luft, °C</translation></message>
    <message><source>cloud, %</source><translation>Wolken, %</translation></message>
    <message><source>wind, m/s</source><translation>Wind, m/s</translation></message>
    <message><source>day %1</source><translation>Tag %1</translation></message>
    <message><source>day %1, %2</source><translation>Tag %1, %2</translation></message>
</context>
<context>
    <name>DaysView</name>
    <message><source>%1: %2 of %3 nights go below the stress line; the lowest is night %4 with %5 mg/L at %6.</source><translation>%1: %2 von %3 Nächten gehen unter die Stresslinie; am tiefsten ist Nacht %4 mit %5 mg/L um %6.</translation></message>
    <message><source>Night %1: %2 min of air, low %3 mg/L at %4.</source><translation>Nacht %1: %2 min Luft, Tiefstwert %3 mg/L um %4.</translation></message>
</context>
<context>
    <name>DebtView</name>
    <message><source>oxygen debt left in the whole pond, % of the start</source><translation>verbliebene Sauerstoffschuld im ganzen Teich, % des Anfangs</translation></message>
    <message><source>dose, % a day</source><translation>Dosis, % am Tag</translation></message>
    <message><source>With no new air %1 % of the pond's oxygen debt is there after %2 days.</source><translation>Ohne neue Luft sind nach %2 Tagen %1 % der Sauerstoffschuld des Teichs da.</translation></message>
    <message><source>%1: after %2 days %3 % of the pond's oxygen debt is left; with no new air %4 %.</source><translation>%1: nach %2 Tagen sind %3 % der Sauerstoffschuld des Teichs übrig; ohne neue Luft %4 %.</translation></message>
</context>
<context>
    <name>DepthView</name>
    <message><source>stress %1</source><translation>Stress %1</translation></message>
    <message><source>lethal %1</source><translation>tödlich %1</translation></message>
    <message><source>depth, m</source><translation>Tiefe, m</translation></message>
    <message><source>down to %1 m</source><translation>bis %1 m</translation></message>
    <message><source>at no depth</source><translation>in keiner Tiefe</translation></message>
    <message><source>%1: at the start the fish find enough oxygen %2, at noon after the last night %3.</source><translation>%1: am Anfang finden die Fische genug Sauerstoff %2, am Mittag nach der letzten Nacht %3.</translation></message>
</context>
<context>
    <name>FirstPondDialog</name>
    <message><source>A first pond</source><translation>Ein erster Teich</translation></message>
    <message><source>A new pond</source><translation>Ein neuer Teich</translation></message>
    <message><source>Name of the pond</source><translation>Name des Teichs</translation></message>
    <message><source>What is the pond called?</source><translation>Wie heißt der Teich?</translation></message>
    <message><source>Latitude</source><translation>Breite</translation></message>
    <message><source>Longitude</source><translation>Länge</translation></message>
    <message><source>Elevation</source><translation>Höhe</translation></message>
    <message><source>When shall the air start?</source><translation>Wann soll die Luft beginnen?</translation></message>
    <message><source>Area</source><translation>Fläche</translation></message>
    <message><source>How large is it?</source><translation>Wie groß ist er?</translation></message>
    <message><source>Deepest point</source><translation>Tiefste Stelle</translation></message>
    <message><source>How deep is it at its deepest?</source><translation>Wie tief ist er an der tiefsten Stelle?</translation></message>
    <message><source>Age</source><translation>Alter</translation></message>
    <message><source>Muck</source><translation>Faulschlamm</translation></message>
    <message><source>Colour of the water</source><translation>Farbe des Wassers</translation></message>
    <message><source>How clear is the water?</source><translation>Wie klar ist das Wasser?</translation></message>
    <message><source>none</source><translation>keine</translation></message>
    <message><source>Water plants</source><translation>Wasserpflanzen</translation></message>
    <message><source>Fish</source><translation>Fische</translation></message>
    <message><source>few</source><translation>wenige</translation></message>
    <message><source>as usual</source><translation>wie üblich</translation></message>
    <message><source>many</source><translation>viele</translation></message>
    <message><source>Sky</source><translation>Himmel</translation></message>
    <message><source>Wind</source><translation>Wind</translation></message>
    <message><source>sunny</source><translation>sonnig</translation></message>
    <message><source>mixed</source><translation>wechselhaft</translation></message>
    <message><source>dull</source><translation>trüb</translation></message>
    <message><source>calm</source><translation>windstill</translation></message>
    <message><source>windy</source><translation>windig</translation></message>
    <message><source>Make the Pond</source><translation>Teich anlegen</translation></message>
</context>
<context>
    <name>HoursView</name>
    <message><source>night %1</source><translation>Nacht %1</translation></message>
    <message><source>%1: the fish water stays above the stress line of %2 mg/L at every hour.</source><translation>%1: das Fischwasser bleibt zu jeder Stunde über der Stresslinie von %2 mg/L.</translation></message>
    <message><source>%1: %2 hours below the stress line, most often at %3 (%4 of %5 nights).</source><translation>%1: %2 Stunden unter der Stresslinie, am häufigsten um %3 (%4 von %5 Nächten).</translation></message>
</context>
<context>
    <name>LimitsForm</name>
    <message><source>sport fish</source><translation>Sportfische</translation></message>
    <message><source>catfish</source><translation>Welse</translation></message>
    <message><source>carp</source><translation>Karpfen</translation></message>
    <message><source>koi</source><translation>Koi</translation></message>
    <message><source>trout</source><translation>Forellen</translation></message>
    <message><source>perch, pike</source><translation>Barsch, Hecht</translation></message>
    <message><source>Fish</source><translation>Fische</translation></message>
    <message><source>Stress line, mg/L</source><translation>Stresslinie, mg/L</translation></message>
    <message><source>Lethal line, mg/L</source><translation>Tödliche Grenze, mg/L</translation></message>
    <message><source>Fish water, %</source><translation>Fischwasser, %</translation></message>
    <message><source>Warmest, %1</source><translation>Wärmstes, %1</translation></message>
    <message><source>No pond is open.</source><translation>Es ist kein Teich geöffnet.</translation></message>
    <message><source>no end if empty</source><translation>kein Ende, wenn leer</translation></message>
</context>
<context>
    <name>MainWindow</name>
    <message><source>&amp;File</source><translation>&amp;Datei</translation></message>
    <message><source>&amp;Edit</source><translation>&amp;Bearbeiten</translation></message>
    <message><source>&amp;Ramps</source><translation>&amp;Rampen</translation></message>
    <message><source>&amp;View</source><translation>&amp;Ansicht</translation></message>
    <message><source>&amp;Help</source><translation>&amp;Hilfe</translation></message>
    <message><source>&amp;Open…</source><translation>Ö&amp;ffnen …</translation></message>
    <message><source>&amp;Save</source><translation>&amp;Speichern</translation></message>
    <message><source>Save &amp;As…</source><translation>Speichern &amp;unter …</translation></message>
    <message><source>&amp;Quit</source><translation>&amp;Beenden</translation></message>
    <message><source>Schedule</source><translation>Zeitplan</translation></message>
    <message><source>Pond</source><translation>Teich</translation></message>
    <message><source>No pond is open.</source><translation>Es ist kein Teich geöffnet.</translation></message>
    <message><source>A First Pond: Twelve Questions…</source><translation>Ein erster Teich: zwölf Fragen …</translation></message>
    <message><source>Open a Pond File…</source><translation>Teichdatei öffnen …</translation></message>
    <message><source>Computing the ramps</source><translation>Die Rampen werden berechnet</translation></message>
    <message><source>Asking a thousand ponds what to measure</source><translation>Tausend Teiche werden befragt, was zu messen ist</translation></message>
    <message><source>Drawing ponds like this one</source><translation>Teiche wie dieser werden gezogen</translation></message>
    <message><source>Looking for what makes the lows</source><translation>Gesucht wird, was die Tiefstwerte macht</translation></message>
    <message><source>Export the chart</source><translation>Diagramm ausgeben</translation></message>
    <message><source>Save the pond as</source><translation>Teich speichern unter</translation></message>
    <message><source>Save the pond</source><translation>Teich speichern</translation></message>
    <message><source>Save over it?</source><translation>Trotzdem überschreiben?</translation></message>
    <message><source>Your changes are still here; save under another name.</source><translation>Ihre Änderungen sind noch da; speichern Sie unter einem anderen Namen.</translation></message>
    <message><source>Unsaved changes</source><translation>Ungespeicherte Änderungen</translation></message>
    <message><source>"%1" has changes that are not saved.</source><translation>„%1“ hat Änderungen, die nicht gespeichert sind.</translation></message>
    <message><source>Open a pond</source><translation>Teich öffnen</translation></message>
    <message><source>Compare with another version</source><translation>Mit einer anderen Fassung vergleichen</translation></message>
    <message><source>Read It Again</source><translation>Neu lesen</translation></message>
    <message><source>Bring It Back</source><translation>Zurückholen</translation></message>
    <message><source>Open &amp;Recent</source><translation>&amp;Zuletzt geöffnet</translation></message>
    <message><source>&amp;Read Again from Disk</source><translation>&amp;Neu von der Platte lesen</translation></message>
    <message><source>Co&amp;mpare with Another Version…</source><translation>Mit anderer Fassung &amp;vergleichen …</translation></message>
    <message><source>Print the Char&amp;t…</source><translation>Diagramm &amp;drucken …</translation></message>
    <message><source>&amp;Export Chart…</source><translation>Diagramm e&amp;xportieren …</translation></message>
    <message><source>&amp;First Pond: Twelve Questions…</source><translation>&amp;Erster Teich: zwölf Fragen …</translation></message>
    <message><source>New from a &amp;Template</source><translation>Neu aus Vor&amp;lage</translation></message>
    <message><source>New &amp;Window</source><translation>Neues Fens&amp;ter</translation></message>
    <message><source>&amp;Undo</source><translation>&amp;Rückgängig</translation></message>
    <message><source>&amp;Redo</source><translation>&amp;Wiederholen</translation></message>
    <message><source>&amp;Copy Chart</source><translation>Diagramm &amp;kopieren</translation></message>
    <message><source>For the &amp;Owner</source><translation>Für den &amp;Eigentümer</translation></message>
    <message><source>&amp;Next Night</source><translation>&amp;Nächste Nacht</translation></message>
    <message><source>&amp;Previous Night</source><translation>&amp;Vorige Nacht</translation></message>
    <message><source>&amp;Play the Nights</source><translation>Nächte &amp;abspielen</translation></message>
    <message><source>All &amp;Ramps, One Night</source><translation>Alle &amp;Rampen, eine Nacht</translation></message>
    <message><source>&amp;All Nights, One Ramp</source><translation>Alle Nächte, e&amp;ine Rampe</translation></message>
    <message><source>&amp;Criteria of EPA 1986</source><translation>&amp;Kriterien der EPA 1986</translation></message>
    <message><source>&amp;Theme</source><translation>&amp;Farben</translation></message>
    <message><source>Like the &amp;Desktop</source><translation>Wie der &amp;Desktop</translation></message>
    <message><source>&amp;Light</source><translation>&amp;Hell</translation></message>
    <message><source>&amp;Dark</source><translation>D&amp;unkel</translation></message>
    <message><source>&amp;Keys and Shortcuts</source><translation>&amp;Tasten und Kürzel</translation></message>
    <message><source>&amp;Cautions</source><translation>&amp;Vorbehalte</translation></message>
    <message><source>Cautions</source><translation>Vorbehalte</translation></message>
    <message><source>&amp;About Dawnline</source><translation>Ü&amp;ber Dawnline</translation></message>
    <message><source>About Dawnline</source><translation>Über Dawnline</translation></message>
    <message><source>Keys and shortcuts</source><translation>Tasten und Kürzel</translation></message>
    <message><source>No pond was opened yet</source><translation>Noch wurde kein Teich geöffnet</translation></message>
    <message><source>&amp;Forget These</source><translation>Diese ver&amp;gessen</translation></message>
    <message><source>And %1 more.</source><translation>Und %1 weitere.</translation></message>
    <message><source>The file was changed by another program since it was read.</source><translation>Die Datei wurde seit dem Lesen von einem anderen Programm geändert.</translation></message>
    <message><source>A pond</source><translation>Ein Teich</translation></message>
    <message><source>"%1" was not saved when the program ended.</source><translation>„%1“ war nicht gespeichert, als das Programm endete.</translation></message>
    <message><source>"%1" (%2) had changes that were not saved when the program ended.</source><translation>„%1“ (%2) hatte Änderungen, die nicht gespeichert waren, als das Programm endete.</translation></message>
    <message><source>There are %1 more after it.</source><translation>Danach kommen noch %1.</translation></message>
    <message><source>"%1" was not opened; the pond you had stays.</source><translation>„%1“ wurde nicht geöffnet; Ihr bisheriger Teich bleibt.</translation></message>
    <message><source>"%1" was not opened.</source><translation>„%1“ wurde nicht geöffnet.</translation></message>
    <message><source>Opened, with remarks:</source><translation>Geöffnet, mit Anmerkungen:</translation></message>
    <message><source>Drop a pond file here, or:</source><translation>Ziehen Sie eine Teichdatei hierher, oder:</translation></message>
</context>
<context>
    <name>NightPlot</name>
    <message><source>noon</source><translation>Mittag</translation></message>
    <message><source>midnight</source><translation>Mitternacht</translation></message>
    <message><source>oxygen in the fish water, mg/L</source><translation>Sauerstoff im Fischwasser, mg/L</translation></message>
    <message><source>sunset %1</source><translation>Sonnenuntergang %1</translation></message>
    <message><source>sunrise %1</source><translation>Sonnenaufgang %1</translation></message>
    <message><source>fish under stress, below %1</source><translation>Fische unter Stress, unter %1</translation></message>
    <message><source>lethal if it lasts, below %1</source><translation>tödlich, wenn es anhält, unter %1</translation></message>
    <message><source>The night</source><translation>Die Nacht</translation></message>
</context>
<context>
    <name>NightScene</name>
    <message><source>night %1</source><translation>Nacht %1</translation></message>
    <message><source>do nothing, night %1</source><translation>nichts tun, Nacht %1</translation></message>
    <message><source>night %1, %2 to %3</source><translation>Nacht %1, %2 bis %3</translation></message>
    <message><source>All ramps, %1</source><translation>Alle Rampen, %1</translation></message>
    <message><source>All nights of "%1"; heavy: %2</source><translation>Alle Nächte von „%1“; kräftig: %2</translation></message>
    <message><source>Stress line %1 mg/L, lethal line %2 mg/L.</source><translation>Stresslinie %1 mg/L, tödliche Grenze %2 mg/L.</translation></message>
    <message><source>Sunset %1, sunrise %2.</source><translation>Sonnenuntergang %1, Sonnenaufgang %2.</translation></message>
    <message><source>%1: low %2 mg/L at %3.</source><translation>%1: Tiefstwert %2 mg/L um %3.</translation></message>
</context>
<context>
    <name>Notice</name>
    <message><source>Notice</source><translation>Hinweis</translation></message>
    <message><source>Close</source><translation>Schließen</translation></message>
    <message><source>Close the notice</source><translation>Hinweis schließen</translation></message>
</context>
<context>
    <name>OwnerView</name>
    <message><source>without it</source><translation>ohne</translation></message>
    <message><source>with the plan</source><translation>mit dem Plan</translation></message>
    <message><source>so little oxygen that fish can die</source><translation>so wenig Sauerstoff, dass Fische sterben können</translation></message>
    <message><source>little oxygen, and the fish suffer</source><translation>wenig Sauerstoff, und die Fische leiden</translation></message>
    <message><source>enough oxygen for the fish</source><translation>genug Sauerstoff für die Fische</translation></message>
    <message><source>This plan could not be computed.</source><translation>Dieser Plan konnte nicht berechnet werden.</translation></message>
    <message><source>Oxygen through the night</source><translation>Sauerstoff durch die Nacht</translation></message>
    <message><source>For the owner</source><translation>Für den Eigentümer</translation></message>
    <message><source>Earlier</source><translation>Früher</translation></message>
    <message><source>The night before</source><translation>Die Nacht davor</translation></message>
    <message><source>Later</source><translation>Später</translation></message>
    <message><source>The next night</source><translation>Die nächste Nacht</translation></message>
    <message><source>Play</source><translation>Abspielen</translation></message>
    <message><source>Print</source><translation>Drucken</translation></message>
    <message><source>Print this night</source><translation>Diese Nacht drucken</translation></message>
    <message><source>Close</source><translation>Schließen</translation></message>
    <message><source>Of ten ponds like yours</source><translation>Von zehn Teichen wie Ihrem</translation></message>
</context>
<context>
    <name>PaperActions</name>
    <message><source>Print Pre&amp;view of the Papers…</source><translation>Vors&amp;chau der Papiere …</translation></message>
    <message><source>&amp;Print the Papers…</source><translation>&amp;Papiere drucken …</translation></message>
    <message><source>Save the Pap&amp;ers…</source><translation>Papiere spe&amp;ichern …</translation></message>
    <message><source>The run of the papers is being computed…</source><translation>Der Lauf für die Papiere wird berechnet …</translation></message>
    <message><source>Preview of the papers</source><translation>Vorschau der Papiere</translation></message>
    <message><source>Save the papers into a folder</source><translation>Papiere in einen Ordner speichern</translation></message>
    <message><source>%1 Nothing was written.</source><translation>%1 Es wurde nichts geschrieben.</translation></message>
</context>
<context>
    <name>PlanDialog</name>
    <message><source>Without the aerator</source><translation>Ohne die Belüftung</translation></message>
    <message><source>What the pond can run for good</source><translation>Was der Teich auf Dauer verträgt</translation></message>
    <message><source>Days to hold</source><translation>Wartetage</translation></message>
    <message><source>Faster and slower</source><translation>Schneller und langsamer</translation></message>
    <message><source>Assumptions</source><translation>Annahmen</translation></message>
    <message><source>Cautions</source><translation>Vorbehalte</translation></message>
    <message><source>Start at once</source><translation>Sofort beginnen</translation></message>
    <message><source>Do not start now</source><translation>Jetzt nicht beginnen</translation></message>
    <message><source>&amp;Find</source><translation>&amp;Finden</translation></message>
    <message><source>&amp;Add to the Pond</source><translation>Zum Teich &amp;hinzufügen</translation></message>
    <message><source>Find a ramp</source><translation>Rampe finden</translation></message>
    <message><source>The answer</source><translation>Die Antwort</translation></message>
    <message><source>State of the search</source><translation>Stand der Suche</translation></message>
    <message><source>What was found</source><translation>Was gefunden wurde</translation></message>
    <message><source>Stopping.</source><translation>Wird angehalten.</translation></message>
    <message><source>Close</source><translation>Schließen</translation></message>
    <message><source>Searching.</source><translation>Sucht.</translation></message>
    <message><source>Finding a ramp</source><translation>Eine Rampe wird gesucht</translation></message>
    <message><source>Nothing was searched for this pond yet.</source><translation>Für diesen Teich wurde noch nichts gesucht.</translation></message>
    <message><source>Of the pond before your last edit.</source><translation>Vom Teich vor Ihrer letzten Änderung.</translation></message>
    <message><source>Stress &amp;line, mg/L</source><translation>Stress&amp;linie, mg/L</translation></message>
</context>
<context>
    <name>Ramp</name>
    <message><source>do nothing</source><translation>nichts tun</translation></message>
</context>
<context>
    <name>RampActions</name>
    <message><source>&amp;Add a Ramp</source><translation>Rampe &amp;hinzufügen</translation></message>
    <message><source>Add</source><translation>Neu</translation></message>
    <message><source>Add a ramp</source><translation>Rampe hinzufügen</translation></message>
    <message><source>&amp;Find a Ramp…</source><translation>Rampe &amp;finden …</translation></message>
    <message><source>Find</source><translation>Finden</translation></message>
    <message><source>Find the ramp that harms few ponds in few days</source><translation>Die Rampe finden, die in wenigen Tagen wenigen Teichen schadet</translation></message>
    <message><source>&amp;Copy the Ramp</source><translation>Rampe &amp;kopieren</translation></message>
    <message><source>Copy</source><translation>Kopieren</translation></message>
    <message><source>As a &amp;Table of Minutes</source><translation>Als &amp;Tabelle der Minuten</translation></message>
    <message><source>As table</source><translation>Als Tabelle</translation></message>
    <message><source>Turn “%1” into a table</source><translation>„%1“ in eine Tabelle wandeln</translation></message>
    <message><source>Move “%1”</source><translation>„%1“ verschieben</translation></message>
    <message><source>Move &amp;Up</source><translation>Nach &amp;oben</translation></message>
    <message><source>Up</source><translation>Hoch</translation></message>
    <message><source>Move &amp;Down</source><translation>Nach &amp;unten</translation></message>
    <message><source>Down</source><translation>Runter</translation></message>
    <message><source>De&amp;lete the Ramp</source><translation>Rampe &amp;löschen</translation></message>
    <message><source>Delete</source><translation>Löschen</translation></message>
    <message><source>Delete “%1”</source><translation>„%1“ löschen</translation></message>
    <message><source>Line C&amp;olour</source><translation>Lin&amp;ienfarbe</translation></message>
    <message><source>By its place in the list</source><translation>Nach dem Platz in der Liste</translation></message>
    <message><source>Change the colour of “%1”</source><translation>Farbe von „%1“ ändern</translation></message>
    <message><source>blue</source><translation>blau</translation></message>
    <message><source>vermilion</source><translation>zinnoberrot</translation></message>
    <message><source>green</source><translation>grün</translation></message>
    <message><source>orange</source><translation>orange</translation></message>
    <message><source>sky blue</source><translation>himmelblau</translation></message>
    <message><source>purple</source><translation>purpur</translation></message>
    <message><source>%1, other dashes</source><translation>%1, andere Striche</translation></message>
    <message><source>Colour</source><translation>Farbe</translation></message>
    <message><source>Colour and dashes of the ramp's line</source><translation>Farbe und Striche der Rampenlinie</translation></message>
    <message><source>Add the ramp “%1”</source><translation>Rampe „%1“ hinzufügen</translation></message>
</context>
<context>
    <name>RampForm</name>
    <message><source>No ramp is selected.</source><translation>Keine Rampe ist gewählt.</translation></message>
    <message><source>Run time</source><translation>Laufzeit</translation></message>
    <message><source>Time of day</source><translation>Tageszeit</translation></message>
    <message><source>Diffusers</source><translation>Belüfter</translation></message>
    <message><source>Name</source><translation>Name</translation></message>
    <message><source>Rename “%1”</source><translation>„%1“ umbenennen</translation></message>
    <message><source>Kind</source><translation>Art</translation></message>
    <message><source>Change the kind of “%1”</source><translation>Art von „%1“ ändern</translation></message>
    <message><source>The chosen ramp</source><translation>Die gewählte Rampe</translation></message>
    <message><source>Change the chosen ramp</source><translation>Gewählte Rampe ändern</translation></message>
    <message><source>First day, min</source><translation>Erster Tag, min</translation></message>
    <message><source>Times each day</source><translation>Faktor je Tag</translation></message>
    <message><source>Added daily, min</source><translation>Täglich mehr, min</translation></message>
    <message><source>Dose, % a day</source><translation>Dosis, % am Tag</translation></message>
    <message><source>Never lift the cap</source><translation>Obergrenze nie aufheben</translation></message>
    <message><source>Minutes by day</source><translation>Minuten je Tag</translation></message>
    <message><source>Skip hold days</source><translation>Wartetage auslassen</translation></message>
    <message><source>Start</source><translation>Beginn</translation></message>
    <message><source>Not before</source><translation>Nicht vor</translation></message>
    <message><source>any time</source><translation>jederzeit</translation></message>
    <message><source>Not after</source><translation>Nicht nach</translation></message>
    <message><source>Runs a day</source><translation>Läufe am Tag</translation></message>
    <message><source>1 if empty</source><translation>1, wenn leer</translation></message>
    <message><source>Open</source><translation>Offen</translation></message>
    <message><source>Depth, %1</source><translation>Tiefe, %1</translation></message>
    <message><source>%1 if empty</source><translation>%1, wenn leer</translation></message>
    <message><source>all %1 if empty</source><translation>alle %1, wenn leer</translation></message>
</context>
<context>
    <name>RampModel</name>
    <message><source>failed</source><translation>gescheitert</translation></message>
    <message><source>The ramps</source><translation>Die Rampen</translation></message>
    <message><source>worst
mg/L</source><translation>tiefst
mg/L</translation></message>
    <message><source>in
night</source><translation>in
Nacht</translation></message>
    <message><source>chance
%</source><translation>Risiko
%</translation></message>
    <message><source>dose
%/day</source><translation>Dosis
%/Tag</translation></message>
    <message><source>settles
mg/L</source><translation>am Ende
mg/L</translation></message>
</context>
<context>
    <name>Sentence</name>
    <message><source>Night {night}: "{ramp}" falls to {low} mg/L at {clock}, below the lethal line.</source><translation>Nacht {night}: „{ramp}“ fällt um {clock} auf {low} mg/L, unter die tödliche Grenze.</translation></message>
    <message><source>Night {night}: "{ramp}" falls to {low} mg/L at {clock}, below the stress line.</source><translation>Nacht {night}: „{ramp}“ fällt um {clock} auf {low} mg/L, unter die Stresslinie.</translation></message>
    <message><source>Night {night}: no ramp goes below the stress line; the lowest is "{ramp}" with {low} mg/L at {clock}.</source><translation>Nacht {night}: keine Rampe geht unter die Stresslinie; am tiefsten liegt „{ramp}“ mit {low} mg/L um {clock}.</translation></message>
    <message><source>Night {night}: the low is {low} mg/L at {clock}, without a new aerator.</source><translation>Nacht {night}: der Tiefstwert ist {low} mg/L um {clock}, ohne neue Belüftung.</translation></message>
    <message><source>With "{ramp}": {low} mg/L.</source><translation>Mit „{ramp}“: {low} mg/L.</translation></message>
    <message><source>Without the new aerator: {low} mg/L.</source><translation>Ohne die neue Belüftung: {low} mg/L.</translation></message>
    <message><source>Without the new aerator: {low} mg/L, below the stress line as well.</source><translation>Ohne die neue Belüftung: {low} mg/L, ebenfalls unter der Stresslinie.</translation></message>
    <message><source>The worst night of "{ramp}" is night {night}, {low} mg/L at {clock}.</source><translation>Die schlimmste Nacht von „{ramp}“ ist Nacht {night}, {low} mg/L um {clock}.</translation></message>
    <message><source>"{ramp}": the worst is night {night}, {low} mg/L at {clock}. Without the new aerator that night's low is {nothing} mg/L.</source><translation>„{ramp}“: am schlimmsten ist Nacht {night}, {low} mg/L um {clock}. Ohne die neue Belüftung ist der Tiefstwert dieser Nacht {nothing} mg/L.</translation></message>
    <message><source>Without the new aerator the worst is night {night}, {low} mg/L at {clock}.</source><translation>Ohne die neue Belüftung ist Nacht {night} am schlimmsten, {low} mg/L um {clock}.</translation></message>
    <message><source>This is a comparison of plans under stated assumptions, not a prediction of survival.</source><translation>Dies ist ein Vergleich von Plänen unter genannten Annahmen, keine Vorhersage des Überlebens.</translation></message>
    <message><source>Readings override the model.</source><translation>Messungen gehen dem Modell vor.</translation></message>
    <message><source>It is valid for the profile of {date}; run it again when that is more than seven days old or the weather has changed.</source><translation>Er gilt für das Profil vom {date}; rechnen Sie neu, wenn dieses älter als sieben Tage ist oder das Wetter sich geändert hat.</translation></message>
    <message><source>Local codes and permits apply, and electrical work is for a licensed electrician.</source><translation>Örtliche Vorschriften und Genehmigungen gelten, und Elektroarbeiten gehören in die Hand einer zugelassenen Elektrofachkraft.</translation></message>
    <message><source>It is not for the life support of high-value stock.</source><translation>Er taugt nicht zur Lebenserhaltung wertvoller Bestände.</translation></message>
    <message><source>Aeration that runs in winter makes thin ice: mark it and keep people off.</source><translation>Belüftung, die im Winter läuft, macht dünnes Eis: kennzeichnen Sie es und halten Sie Menschen fern.</translation></message>
    <message><source>No single thing makes that low: none of them gains 0.1 mg/L when it is left out.</source><translation>Keine einzelne Ursache macht diesen Tiefstwert: keine bringt 0,1 mg/L, wenn man sie weglässt.</translation></message>
    <message><source>What makes that low (mg/L gained if it were not there): {first} {firstGain}.</source><translation>Was diesen Tiefstwert macht (gewonnene mg/L, gäbe es das nicht): {first} {firstGain}.</translation></message>
    <message><source>What makes that low (mg/L gained if it were not there): {first} {firstGain}; {second} {secondGain}.</source><translation>Was diesen Tiefstwert macht (gewonnene mg/L, gäbe es das nicht): {first} {firstGain}; {second} {secondGain}.</translation></message>
    <message><source>What makes that low (mg/L gained if it were not there): {first} {firstGain}; {second} {secondGain}; {third} {thirdGain}.</source><translation>Was diesen Tiefstwert macht (gewonnene mg/L, gäbe es das nicht): {first} {firstGain}; {second} {secondGain}; {third} {thirdGain}.</translation></message>
</context>
<context>
    <name>SidePanel</name>
    <message><source>The ramps and what they come to</source><translation>Die Rampen und wohin sie führen</translation></message>
    <message><source>What can be changed</source><translation>Was sich ändern lässt</translation></message>
    <message><source>&amp;Ramp</source><translation>&amp;Rampe</translation></message>
    <message><source>&amp;Limits</source><translation>&amp;Grenzen</translation></message>
    <message><source>&amp;Aerator</source><translation>Be&amp;lüftung</translation></message>
    <message><source>&amp;Nights to compute</source><translation>Zu berechnende &amp;Nächte</translation></message>
    <message><source>Nights to compute</source><translation>Zu berechnende Nächte</translation></message>
</context>
<context>
    <name>Term</name>
    <message><source>sport fish</source><translation>Sportfische</translation></message>
    <message><source>catfish</source><translation>Welse</translation></message>
    <message><source>carp</source><translation>Karpfen</translation></message>
    <message><source>koi</source><translation>Koi</translation></message>
    <message><source>trout</source><translation>Forellen</translation></message>
    <message><source>perch, walleye and pike</source><translation>Barsch, Zander und Hecht</translation></message>
    <message><source>oxygen debt of the bottom water</source><translation>Sauerstoffschuld des Tiefenwassers</translation></message>
    <message><source>lack of oxygen in the bottom water</source><translation>Sauerstoffmangel im Tiefenwasser</translation></message>
    <message><source>muck stirred up</source><translation>aufgewirbelter Faulschlamm</translation></message>
    <message><source>oxygen demand of the mud</source><translation>Sauerstoffzehrung des Schlamms</translation></message>
    <message><source>breathing of algae and weeds</source><translation>Atmung von Algen und Wasserpflanzen</translation></message>
    <message><source>breathing of the fish</source><translation>Atmung der Fische</translation></message>
    <message><source>this weather instead of usual days</source><translation>dieses Wetter statt üblicher Tage</translation></message>
    <message><source>dying algae and weeds</source><translation>absterbende Algen und Wasserpflanzen</translation></message>
    <message><source>photosynthesis</source><translation>Photosynthese</translation></message>
    <message><source>respiration</source><translation>Atmung</translation></message>
    <message><source>a pond without a title</source><translation>ein Teich ohne Namen</translation></message>
</context>
<context>
    <name>Views</name>
    <message><source>Days</source><translation>Tage</translation></message>
    <message><source>Hours</source><translation>Stunden</translation></message>
    <message><source>Water</source><translation>Wasser</translation></message>
    <message><source>Budget</source><translation>Bilanz</translation></message>
    <message><source>Debt</source><translation>Schuld</translation></message>
    <message><source>Profiles</source><translation>Profile</translation></message>
    <message><source>Gases</source><translation>Gase</translation></message>
    <message><source>Risk</source><translation>Risiko</translation></message>
    <message><source>Measure</source><translation>Messen</translation></message>
    <message><source>mg/L</source><translation>mg/L</translation></message>
</context>
<context>
    <name>ViewsPage</name>
    <message><source>Night</source><translation>Nacht</translation></message>
    <message><source>Play</source><translation>Abspielen</translation></message>
    <message><source>What this night comes to</source><translation>Was diese Nacht ergibt</translation></message>
    <message><source>What makes the low</source><translation>Was den Tiefstwert macht</translation></message>
    <message><source>State of the picture</source><translation>Stand des Bildes</translation></message>
    <message><source>What stands under the cursor</source><translation>Was unter dem Zeiger steht</translation></message>
    <message><source>Views</source><translation>Ansichten</translation></message>
    <message><source>Of the pond before your last edit; computing anew.</source><translation>Vom Teich vor Ihrer letzten Änderung; wird neu berechnet.</translation></message>
    <message><source>All ramps, one night</source><translation>Alle Rampen, eine Nacht</translation></message>
    <message><source>All ramps in one night</source><translation>Alle Rampen in einer Nacht</translation></message>
    <message><source>All nights, one ramp</source><translation>Alle Nächte, eine Rampe</translation></message>
    <message><source>All nights of the selected ramp</source><translation>Alle Nächte der gewählten Rampe</translation></message>
    <message><source>The night before</source><translation>Die Nacht davor</translation></message>
    <message><source>The next night</source><translation>Die nächste Nacht</translation></message>
    <message><source>Play the nights, one a second</source><translation>Nächte abspielen, eine je Sekunde</translation></message>
    <message><source>What makes the low is being computed.</source><translation>Was den Tiefstwert macht, wird berechnet.</translation></message>
</context>
</TS>
