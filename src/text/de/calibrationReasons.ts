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
  nonSquarePixels: {
    message:
      'Die Pixel des Films sind {aspect}-mal so breit wie hoch; in einem so gestauchten Bild wird die Scheibe der Kugel nicht gesucht.',
    remedy: 'Exportieren Sie den Clip mit quadratischen Pixeln.',
  },
  muzzleOutside: {
    message:
      'Der Mündungspunkt ({x}, {y}) liegt außerhalb des Bilds von {width} x {height} Pixeln.',
    remedy: 'Markieren Sie die Mündung innerhalb des Bilds.',
  },
  pointOutsideFilm: {
    message:
      'In Bild {frame} ist eine Stelle der Kugel angegeben, der Film endet aber mit Bild {last}.',
    remedy: 'Entfernen Sie diesen Punkt, oder prüfen Sie, ob er auf dieser Aufnahme gesetzt wurde.',
  },
  ballTooSmall: {
    message: 'Bei diesem Maßstab misst die Kugel {across} Pixel; mindestens {least} sind nötig.',
    remedy:
      'Prüfen Sie die bekannte Länge und den Kugeldurchmesser, oder filmen Sie aus größerer Nähe.',
  },
  ballTooLarge: {
    message: 'Bei diesem Maßstab misst die Kugel {across} Pixel, mehr als das Bild.',
    remedy: 'Prüfen Sie die bekannte Länge und den Kugeldurchmesser.',
  },
  axisDisagrees: {
    message:
      'Die angegebene Flugrichtung weicht um {degrees} Grad von der Bahn ab; die Abstände sind dafür korrigiert.',
    remedy:
      'Lassen Sie die Richtung aus der Bahn bestimmen, oder zeichnen Sie sie längs des Flugs.',
  },
  ratesDisagree: {
    message:
      '{form, select, typed {Eingegeben sind {rate} Bilder/s, die Datei gibt {file} an.} other {Die Zeitstempel der Datei ergeben {file} Bilder/s, als Bildrate der Aufnahme sind {rate} angegeben.}}',
    remedy:
      '{form, select, typed {Prüfen Sie mit einer gefilmten Uhr oder Lampe, welche von beiden die Kamera wirklich hatte.} other {Wurde der Clip beim Speichern verlangsamt, verwenden Sie stattdessen die Bildrate der Aufnahme als Zeitbasis.}}',
  },
  lampTooFast: {
    message:
      'Bei der erwarteten Bildrate flimmert die Lampe {times}-mal je Bild; nötig sind mehr als 2 Bilder je Flimmern.',
    remedy: 'Verwenden Sie eine gefilmte Uhr.',
  },
  lampTooShort: {
    message: 'Der Clip zeigt {flickers} Schwankungen der Lampe; mindestens {fewest} sind nötig.',
    remedy: 'Filmen Sie die Lampe länger.',
  },
  distancesDisagree: {
    message:
      'Nach der Brennweite des Objektivs ist die Fluglinie {told} m entfernt, angegeben sind {stated} m; verwendet wird die Brennweite.',
    remedy:
      'Messen Sie vom Objektiv zur Fluglinie, und prüfen Sie, ob Brennweite und Schärfe noch die der Kalibrierung sind.',
  },
  notARectangle: {
    message:
      'Die vier Ecken verfehlen die eines Rechtecks von {width} m mal {height} m um {off} px, bei angegebenen {cornerU} px je Ecke.',
    remedy:
      'Prüfen Sie jede Ecke, ob Breite und Höhe vertauscht sind, und die Kalibrierung des Objektivs.',
  },
  edgeTellsLittle: {
    message:
      '{form, select, known {Nach den Kanten ist die Verzeichnung in den Bildecken nur auf {u} px bekannt.} other {Die Kanten lassen die Verzeichnung in den Bildecken offen.}}',
    remedy:
      'Markieren Sie längere Kanten weiter von der Mitte, und zwar mehrere, oder filmen Sie ein Schachbrett.',
  },
  edgeTooShort: {
    message:
      '{form, select, points {Eine Kante braucht mindestens {fewest} Punkte, damit ihre Krümmung zu sehen ist.} other {Die Kante ist über {length} px markiert; ihre Krümmung zeigt sich ab {shortest} px, besser über das ganze Bild.}}',
    remedy: 'Setzen Sie ihre beiden Enden weiter auseinander.',
  },
  edgeThroughCentre: {
    message:
      'Die Kante führt auf {distance} px an der Bildmitte vorbei, wo ein Objektiv gerade Linien gerade lässt.',
    remedy:
      'Nehmen Sie eine Kante nahe dem oberen oder unteren Bildrand, oder filmen Sie dort eine.',
  },
  tooFewBoards: {
    message:
      'Das Schachbrett wurde in {boards, plural, =0 {keinem Bild} one {# Bild} other {# Bildern}} gefunden; ein Objektiv braucht mindestens {fewest}.',
    remedy:
      'Filmen Sie das Schachbrett von mehreren Seiten, um 20 bis 40 Grad geneigt und bis in die Bildecken.',
  },
  boardsDoNotFit: {
    message: 'Die Ecken verfehlen ein Objektiv mit zwei radialen Termen im Mittel um {off} px.',
    remedy:
      'Verwenden Sie ein ebenes Schachbrett, lassen Sie Schärfe und Brennweite unverändert, und entfernen Sie unscharfe Bilder.',
  },
  noBoard: {
    message: 'In Bild {frame} tritt kein Schachbrett hervor.',
    remedy:
      'Zeigen Sie das ganze Schachbrett, gleichmäßig beleuchtet und scharf, mit Feldern von mindestens 10 Pixeln Breite.',
  },
  lengthTooUncertain: {
    message:
      'Die bekannte Länge {number} ist mit einer Unsicherheit angegeben, die so groß ist wie sie selbst.',
    remedy:
      'Prüfen Sie die Unsicherheiten der Länge, ihrer Enden, ihrer Tiefe und des Kameraabstands.',
  },
  zeroLength: {
    message: 'Die beiden Enden der bekannten Länge {number} liegen auf demselben Pixel.',
    remedy: 'Ziehen Sie ihre Enden auseinander, auf die beiden Marken.',
  },
  outsideLens: {
    message:
      '{form, select, nothing {Das Objektiv zeigt, so wie es angegeben ist, nichts von dem, was {distance} px von seinem Zentrum entfernt liegt.} other {Der Punkt ({x}, {y}) liegt {distance} px vom Zentrum des Objektivs, wo die angegebene Verzeichnung das Bild auf sich selbst zurückfaltet.}}',
    remedy:
      '{form, select, nothing {Kalibrieren Sie das Objektiv mit Ansichten, die bis in die Ecken reichen.} other {Kalibrieren Sie das Objektiv mit Ansichten, die bis in die Ecken reichen, oder halten Sie Marken und Flug näher an der Mitte.}}',
  },
  beyondHorizon: {
    message: 'Der Punkt ({x}, {y}) liegt am oder hinter dem Horizont der markierten Ebene.',
    remedy: 'Prüfen Sie die vier Ecken der Ebene und ihre Reihenfolge.',
  },
  planeDistance: {
    message: 'Kein Objektiv zeigt die Ebene aus {distance} m so, wie sie markiert ist.',
    remedy: 'Prüfen Sie den Kameraabstand, Breite und Höhe der Ebene und ihre Ecken.',
  },
  picturesOtherSize: {
    message:
      'Die Bilder haben {width} mal {height} Pixel, der Film {filmWidth} mal {filmHeight}: Was sie über das Objektiv verraten, gilt für ihn nicht.',
    remedy:
      'Nehmen Sie die Bilder mit der Kamera so auf, wie sie für den Schuss eingestellt ist: gleiche Bildgröße, Brennweite und Schärfe.',
  },
  noTimeStamps: {
    message: '„{name}“ enthält keine eigenen Zeitstempel.',
    remedy: 'Geben Sie die Bildrate an, mit der aufgenommen wurde.',
  },
  cameraMoved: {
    message:
      '{form, select, moved {Die ruhende Szene steht {distance} px von dort entfernt, wo sie im Schuss {shot} mit demselben Aufbau stand ({across} quer, {down} nach unten): Die Kamera hat sich bewegt.} other {Kamera oder Szene sind nicht wie im Schuss {shot} mit demselben Aufbau. {because}}}',
    remedy:
      'Setzen Sie Maßstab und Mündung in diesem Film neu, oder prüfen Sie, ob er zu diesem Aufbau gehört.',
  },
  sceneSizeDiffers: {
    message:
      'Die Bilder haben {width} x {height} px, die früheren hatten {widthBefore} x {heightBefore} px.',
  },
  sizeChanges: {
    message: 'Nicht alle Bilder haben die Größe des ersten, {width} x {height} px.',
    remedy: 'Schneiden Sie den Clip dort, wo sich die Größe ändert, und verwenden Sie einen Teil.',
  },
  viewTooUncertain: {
    message:
      'Wird die Eingabe „{source}“ um ihre Unsicherheit verschoben, hat der Mittelpunkt in Bild {frame} keinen Platz mehr in der Flugebene.',
    remedy:
      'Kalibrieren Sie das Objektiv, oder markieren Sie die Ebene genauer, oder verwerfen Sie Bilder nahe dem Bildrand.',
  },
};
