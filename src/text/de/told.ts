import type { English, SameShape } from '../catalogue';

export const statement: SameShape<English['report']['statement']> = {
  detail:
    'Geschwindigkeit des Kugelmittelpunkts längs des Flugs, wenn er die Mündungsebene durchquert; Intervall {interval}, Standardunsicherheit {u}{known, select, yes {, {dof} effektive Freiheitsgrade} other {}}.',
  lead: 'Die Membran öffnete <strong>{lead}</strong>, {order, select, before {bevor} other {nachdem}} der Kugelmittelpunkt austrat.',
  sealOpenedAt: 'Membran öffnete bei',
  centreLeftAt: 'Mittelpunkt trat aus bei',
  leadingPoint: 'Vorderster Punkt an der Membran',
  fromOpening: '{time} {order, select, after {nach} other {vor}} dem Öffnen der Membran',
  notFound: 'nicht gefunden',
  noVelocity: 'Eine Austrittsgeschwindigkeit kann nicht angegeben werden: {reason}',
  noLead: 'Wie lange vor der Kugel die Membran öffnete, kann nicht angegeben werden: {reason}',
  warnings:
    'Zur Messung {count, plural, one {gehört eine Warnung, die} other {gehören # Warnungen, die}} mit ihr zitiert werden {count, plural, one {sollte} other {sollten}}.',
  quoted:
    'Der Kugelmittelpunkt trat mit {value} aus der Mündung aus, bei einer Standardunsicherheit von {u}; das Intervall von {low} bis {high} enthält die wahre Geschwindigkeit mit einer Wahrscheinlichkeit von {coverage}{known, select, yes { ({dof} effektive Freiheitsgrade)} other {}}.',
  quotedLead:
    'Die Mündungsmembran öffnete {lead}, {order, select, before {bevor} other {nachdem}} der Kugelmittelpunkt austrat, bei einer Standardunsicherheit von {u}{open, select, yes {; innerhalb ihres Intervalls für {coverage} kann sie davor oder danach geöffnet haben.} other { (Intervall für {coverage}: {low} bis {high}).}}',
  found:
    'Ermittelt aus dem Kugelmittelpunkt in {used} Bildern eines Hochgeschwindigkeitsfilms; Unsicherheiten nach JCGM 100{checked, select, yes {, mit Monte Carlo geprüft (JCGM 101)} other {}}.',
};

export const findings: SameShape<English['report']['findings']> = {
  reading: '<strong>{value}</strong> ({coverage})',
  flight: 'Richtung, Energie, Beschleunigung',
  elevation: 'Richtung beim Austritt',
  elevationIs:
    '<strong>{value}</strong> ({coverage}){way, select, level {: parallel zu den Bildzeilen, soweit bekannt} up {: gegenüber den Bildzeilen nach oben} other {: nach unten}}',
  kineticEnergy: 'Kinetische Energie beim Austritt',
  momentum: 'Impuls beim Austritt',
  boreAcceleration: 'Mittlere Beschleunigung im Rohr',
  boreAccelerationIs:
    '<strong>{value}</strong> ({coverage}) über die letzten drei Kugeldurchmesser der Bohrung',
  deceleration: 'Verzögerung nach dem Austritt',
  dragCoefficient: 'Daraus folgender Widerstandsbeiwert',
  target: 'Am Ziel',
  targetTime: 'Am Ziel bei',
  targetSpeed: 'Geschwindigkeit am Ziel',
  targetSpeedAfter: 'Geschwindigkeit hinter dem Ziel',
  targetEnergy: 'An das Ziel abgegebene Energie',
  streak: 'Geschwindigkeit allein aus der Unschärfe',
  streakIs:
    'Die Bewegungsunschärfe allein ergibt <strong>{speed}</strong> ({coverage}, {frames, plural, one {# Bild} other {# Bilder}}). {agrees, select, yes {Das stimmt mit der Anpassung überein: {apart} {slower, select, yes {langsamer} other {schneller}} über dieselben Bilder.} other {<alarm>Das stimmt nicht mit der Anpassung überein: {apart} {slower, select, yes {langsamer} other {schneller}} über dieselben Bilder. Prüfen Sie Belichtungszeit und Bildrate.</alarm>}}',
  spin: 'Drehung',
  spinIs:
    '<strong>{rate}</strong> ({coverage}): {turns} Umdrehungen je Sekunde, im Bild {way, select, clockwise {im Uhrzeigersinn} other {gegen den Uhrzeigersinn}}.',
  shake: 'Erschütterung',
  noDetail:
    'Die ruhende Szene zeigt zu wenige Einzelheiten, um zu sagen, ob sich Kamera oder Werfer bewegt haben.',
  still: 'Die Szene stand bis auf {within} px still.',
  moved:
    'Die Szene bewegte sich um {rms} px (quadratisches Mittel), höchstens um {most} px, jeweils auf {u} px bekannt; das wurde von den Positionen abgezogen.',
  rivals: 'Nicht die Kugel',
  rival: 'In {frames, plural, one {# Bild} other {# Bildern}} zu sehen: {reason}',
  sound: 'Ton',
  burstHeard: 'Bersten zu hören',
  impactHeard: 'Aufprall auf die Prallwand zu hören',
  meanSpeed: 'Mittlere Geschwindigkeit bis zur Prallwand',
  againstFilm:
    '{verdict, select, no {<alarm>Das stimmt nicht mit dem Film überein: zu hören {apart} {early, select, yes {vor} other {nach}} dem Bersten im Film ({coverage}). Prüfen Sie den Versatz zwischen Ton und Bild und den Abstand des Mikrofons.</alarm>} yes {Das stimmt mit dem Film überein: zu hören {apart} {early, select, yes {vor} other {nach}} dem Bersten im Film ({coverage}).} other {Zu hören {apart} {early, select, yes {vor} other {nach}} dem Bersten im Film ({coverage}).}}',
  drive:
    'Zum Vergleich: Bei vollkommenem Vakuum würde die Außenluft mit etwa {force} N schieben: anfangs {acceleration} m/s², das {gravities}-Fache der Fallbeschleunigung. Auch die Luftsäule hinter der Kugel muss beschleunigt werden.',
};

export const fit: SameShape<English['report']['fit']> = {
  chiSquare: 'Chi-Quadrat {chiSquare} bei {dof} Freiheitsgraden.',
  downWeighted:
    '{count, plural, one {# Mittelpunkt liegt so weit ab, dass er} other {# Mittelpunkte liegen so weit ab, dass sie}} weniger als halb {count, plural, one {zählt} other {zählen}}.',
  monteCarlo:
    'Monte Carlo, {trials} Ziehungen: {value}, Intervall {interval}; {agrees, select, yes {stimmt mit dem Budget überein.} other {stimmt nicht mit dem Budget überein; angegeben ist daher dieses Intervall.}}',
};
