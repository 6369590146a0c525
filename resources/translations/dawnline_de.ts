<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de_DE" sourcelanguage="en">
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
</context>
<context>
    <name>ViewsPage</name>
    <message><source>Night</source><translation>Nacht</translation></message>
    <message><source>Play</source><translation>Abspielen</translation></message>
</context>
<context>
    <name>Ramp</name>
    <message><source>do nothing</source><translation>nichts tun</translation></message>
</context>
<context>
    <name>NightPlot</name>
    <message><source>noon</source><translation>Mittag</translation></message>
    <message><source>midnight</source><translation>Mitternacht</translation></message>
</context>
</TS>
