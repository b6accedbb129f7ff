import type { Catalogue } from '../catalogue';

/** What is wrong with scale, plane, lens, camera and clock. */
export const calibrationReasons: Catalogue['reasons'] = {
  axisOpposed: {
    message: 'Die angegebene Flugrichtung passt nicht zur Bahn; verwendet wird die Bahn.',
    remedy: 'Drehen Sie den Richtungspfeil im Bild so, dass er dem Flug folgt.',
  },
  axisUndetermined: {
    message: 'Die Bahn ist zu kurz, um eine Richtung zu ergeben.',
    remedy: 'Filmen Sie ein längeres Stück des Flugs.',
  },
  lineUndetermined: {
    message: 'Die Punkte legen keine Gerade fest.',
  },
  bandsStandStill: {
    message:
      'Jedes Bild trifft die Lampe im selben Augenblick ihres Flimmerns; ihre Streifen sind daher nicht von Hell und Dunkel der Szene selbst zu unterscheiden.',
    remedy:
      'Filmen Sie die Lampe mit einer Bildrate, in der ihr Flimmern nicht ganzzahlig aufgeht, oder länger.',
  },
  directionOpen: {
    message:
      'Nach diesen Bildern könnten die Zeilen in beiden Richtungen ausgelesen werden: Die Lampe flimmert in zwei Bildern eine ganze Zahl von Malen.',
    remedy:
      'Geben Sie die Ausleserichtung an, oder filmen Sie die Lampe mit einer anderen Bildrate.',
  },
  noFlicker: {
    message: 'Nahe der erwarteten Frequenz wurde kein stetiges Flimmern gefunden.',
    remedy:
      'Beleuchten Sie die Szene nur mit der Lampe, und prüfen Sie die Netzfrequenz und die Bildrate des Clips.',
  },
  timerElapsed: {
    message: 'Die auf der gefilmten Uhr verstrichene Zeit muss größer als null sein.',
    remedy: 'Geben Sie die Differenz der beiden Ablesungen ein.',
  },
  timerFrames: {
    message: 'Das zweite Bild muss nach dem ersten kommen.',
    remedy: 'Wählen Sie für die zweite Ablesung ein späteres Bild.',
  },
  boardsAlike: {
    message:
      'Die Ansichten des Schachbretts gleichen sich zu sehr, um die Brennweite des Objektivs zu verraten.',
    remedy: 'Neigen Sie das Schachbrett in verschiedene Richtungen, um 20 bis 40 Grad.',
  },
  edgeOutside: {
    message: 'Ein Ende der Kante liegt außerhalb des Bilds.',
    remedy: 'Setzen Sie beide Enden innerhalb des Bilds.',
  },
  noEdge: {
    message: 'Zwischen den beiden gesetzten Enden tritt keine Kante hervor.',
    remedy:
      'Markieren Sie eine Kante mit deutlichem Helligkeitssprung, etwa den Umriss des Rohrs oder ein Lineal.',
  },
  pixelsOblong: {
    message:
      'Die Pixel des Films sind nicht quadratisch, was die Bestimmung des Objektivs aus Bildern voraussetzt.',
    remedy: 'Geben Sie die Werte des Objektivs ein, oder markieren Sie stattdessen eine Ebene.',
  },
  parallaxUnknown: {
    message:
      'Weder Kameraabstand noch Brennweite sind angegeben; daher bleibt außer Acht, was vor oder hinter der Fluglinie liegt und wie es den Maßstab ändert.',
    remedy: 'Messen Sie den Abstand vom Objektiv zur Fluglinie, und geben Sie ihn ein.',
  },
  planeCorners: {
    message:
      'Die vier Ecken der Ebene sind nicht die eines Rechtecks in der Folge oben links, oben rechts, unten rechts, unten links.',
    remedy: 'Markieren Sie die Ecken noch einmal in dieser Reihenfolge, jede auf ihrer Ecke.',
  },
  regionOutside: {
    message: 'Der Flugbereich liegt außerhalb des Bilds.',
    remedy: 'Ziehen Sie ihn neu über den Flug, oder entfernen Sie ihn.',
  },
  sceneDiffers: {
    message: 'Die ruhende Szene sieht nicht aus wie die frühere.',
  },
  sceneTooPlain: {
    message: 'Die ruhende Szene enthält zu wenige Einzelheiten, um ihre Lage zu verraten.',
  },
};
