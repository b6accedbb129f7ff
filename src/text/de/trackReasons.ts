import type { Catalogue } from '../catalogue';

/** Where the ball was not found or followed, and how it turns. */
export const trackReasons: Catalogue['reasons'] = {
  againstDirection: {
    message: 'Es ist eine Kugel zu sehen, sie fliegt aber in eine andere Richtung als angegeben.',
    remedy:
      'Drehen Sie die Flugrichtung so, dass sie dem Flug folgt, oder lassen Sie sie aus der Bahn bestimmen.',
  },
  besideMuzzle: {
    message:
      'Es ist eine Kugel zu sehen, ihre Bahn führt aber nicht an der markierten Mündung vorbei.',
    remedy: 'Markieren Sie die Mündung dort, wo der Flug sie verlässt.',
  },
  lookDisagrees: {
    message:
      'Mit dem Aussehen der Kugel, das der Film selbst verrät, wird sie in fast allen Bildern woanders gefunden: Etwas Ähnliches bewegt sich mit ihr, etwa ihr Schatten.',
    remedy:
      'Gehen Sie zum Bild: Setzen Sie den Mittelpunkt von Hand, wenn die Kugel dort zu sehen ist, oder lassen Sie es aus.',
  },
  tumbles: {
    message:
      'Was verfolgt wurde, ist nur hin und wieder rund, wie ein flaches Stück, das sich überschlägt: Es ist nicht die Kugel.',
    remedy: 'Zeigen Sie in einem Bild, was die Kugel ist, oder ziehen Sie den Flugbereich um sie.',
  },
  noMark: {
    message:
      'Auf der Kugel ist nichts zu sehen, das sich dreht: Sie trägt keine deutliche Marke oder dreht sich kaum.',
    remedy:
      'Zeichnen Sie einen dunklen Punkt oder Strich auf die Kugel, von der Kamera aus gesehen neben der Mitte.',
  },
  turnsTooLittle: {
    message:
      'Was sich auf der Kugel von Bild zu Bild ändert, ist zu schwach, um eine drehende Marke vom Licht auf ihr zu unterscheiden.',
    remedy:
      'Nehmen Sie als Marke einen dunklen Punkt, wie ihn Licht nicht erzeugt, oder filmen Sie ein längeres Stück.',
  },
  spinOutOfPlane: {
    message:
      'Die Kugel sieht von Bild zu Bild anders aus, aber nicht so wie mit einer Marke, die sich in der Bildebene dreht: Sie dreht sich um eine andere Achse, oder etwas zieht vor ihr vorbei.',
    remedy:
      'Nur die Drehung um die Blickrichtung lässt sich messen; setzen Sie Marke und Kamera entsprechend.',
  },
  noBall: {
    message:
      '{form, select, noDisc {Der Umriss in Bild {frame} nahe ({x}, {y}) passt zu keiner Scheibe.} noOutline {In Bild {frame} nahe ({x}, {y}) tritt kein Umriss von der Größe der Kugel hervor.} unsteady {Was in Bild {frame} nahe ({x}, {y}) hervortritt, hat keine stetige Scheibenform.} elsewhere {Die Scheibe in Bild {frame} nahe ({x}, {y}) ist nicht dort oder nicht so hell, wie die anderen Bilder die Kugel zeigen.} unmeasured {Die Kugel wurde in diesem Bild nicht gemessen.} other {Keine Kugel gefunden: {search, select, nothing {In keinem von {frames} Bildern hebt sich etwas von der Größe der Kugel vom Hintergrund ab.} other {Nichts von der Größe der Kugel bewegt sich stetig durch den Film, obwohl {seen} von {frames} Bildern etwas von etwa dieser Größe zeigen.}}{search, select, nearest { Am nächsten kommt: {because}} other {}}}}',
    remedy:
      '{form, select, noDisc {Setzen Sie den Mittelpunkt von Hand, oder lassen Sie das Bild aus.} noOutline {Gehen Sie zum Bild: Setzen Sie den Mittelpunkt von Hand, wenn die Kugel dort ist.} unsteady {Setzen Sie den Mittelpunkt von Hand, oder lassen Sie das Bild aus.} elsewhere {Gehen Sie zum Bild: Setzen Sie den Mittelpunkt von Hand, wenn die Kugel dort zu sehen ist, oder lassen Sie es aus.} unmeasured {Setzen Sie den Mittelpunkt von Hand, oder messen Sie erneut.} other {Prüfen Sie die bekannte Länge und den Kugeldurchmesser (sie ergeben die gesuchte Größe), den Flugbereich und ob der Clip die Kugel zeigt; oder setzen Sie ihren Mittelpunkt in mindestens drei Bildern von Hand.}}',
  },
  lowContrast: {
    message:
      'In Bild {frame} nahe ({x}, {y}) unterscheidet sich die Kugel nur um {grey} Grauwerte vom Hintergrund.',
    remedy:
      'Beleuchten Sie die Kugel, oder dunkeln Sie den Hintergrund ab; lassen Sie dieses Bild aus.',
  },
  radiusMismatch: {
    message:
      'Die Scheibe in Bild {frame} nahe ({x}, {y}) hat einen Radius von {found} px; nach Kugeldurchmesser und Maßstab sind {expected} px zu erwarten.',
    remedy:
      'Prüfen Sie den Kugeldurchmesser und die bekannte Länge; stimmen beide, ist dies nicht die Kugel.',
  },
  atFrameEdge: {
    message:
      'In Bild {frame} nahe ({x}, {y}) lässt der Bildrand {form, select, little {zu wenig} other {nur {share}}} vom Umriss der Kugel sehen.',
    remedy: 'Lassen Sie dieses Bild aus; andere zeigen mehr von der Kugel.',
  },
  arcTooShort: {
    message:
      'In Bild {frame} nahe ({x}, {y}) ist {form, select, little {zu wenig} other {nur {share}}} vom Umriss der Kugel zu sehen.',
    remedy: 'Lassen Sie dieses Bild aus; andere zeigen mehr von der Kugel.',
  },
  besideSeeds: {
    message:
      '{form, select, thing {Etwas in den Bildern {first} bis {last} kommt nicht dort vorbei, wo die Kugel sein soll.} other {Es ist eine Kugel zu sehen, ihre Bahn führt aber nicht dort vorbei, wo sie laut Angabe ist.}}',
    remedy: 'Verschieben Sie die als Kugel bezeichneten Stellen auf sie, oder entfernen Sie sie.',
  },
  standsStill: {
    message:
      'Etwas von etwa der richtigen Größe in den Bildern {first} bis {last} bewegt sich kaum.',
  },
  otherPath: {
    message:
      'Etwas von etwa der richtigen Größe in den Bildern {first} bis {last} {form, select, tooFast {bewegt sich schneller, als die Kugel kann} otherWay {bewegt sich in eine andere Richtung als angegeben} other {kommt nicht aus der Mündung}}.',
  },
  notRound: {
    message:
      'Etwas, das sich in den Bildern {first} bis {last} bewegt, hat nicht Größe und runde Form der Kugel (Ähnlichkeit {likeness}).',
  },
  otherSize: {
    message:
      'Etwas Rundes in den Bildern {first} bis {last} hat den {times}-fachen Durchmesser der Kugel.',
  },
  tooFewSightings: {
    message:
      'Etwas von der richtigen Größe ist nur in {count} der {span} Bilder von {first} bis {last} zu sehen.',
  },
  unsteady: {
    message:
      'Etwas von der richtigen Größe in den Bildern {first} bis {last} ändert seine Geschwindigkeit zu stark für eine frei fliegende Kugel.',
  },
  slowsTooMuch: {
    message:
      'Etwas von der richtigen Größe in den Bildern {first} bis {last} verliert {change} seiner Geschwindigkeit, mehr als die Luft der Kugel nehmen kann.',
  },
  twoBalls: {
    message:
      'Zwei Dinge bewegen sich wie die Kugel und sehen aus wie sie: Eines ist in den Bildern {first} bis {last} zu sehen, das andere in {otherFirst} bis {otherLast}.',
    remedy:
      'Zeigen Sie in einem Bild, welches von beiden die Kugel ist, oder ziehen Sie den Flugbereich um sie.',
  },
  fewerFrames: {
    message:
      'Ein anderes Ding folgt über {frames, plural, one {# Bild} other {# Bilder}} seiner eigenen Bahn, weniger als die {ball} der Kugel.',
  },
  lessAlike: {
    message:
      'Ein anderes Ding in den Bildern {first} bis {last} folgt seiner eigenen Bahn, sieht der Kugel aber weniger ähnlich: in Größe, Rundheit oder Schärfe.',
  },
  tooUncertain: {
    message:
      '{form, select, all {In Bild {frame} und den meisten anderen ist der Mittelpunkt nur auf {u} px bekannt: Eine Spiegelung, ein Schatten oder Nebel an der Kugel verdeckt, wo sie endet.} other {In Bild {frame} ist der Mittelpunkt nur auf {u} px bekannt, in der Hälfte der Bilder auf {usual} px.}}',
    remedy:
      'Gehen Sie zum Bild: Setzen Sie den Mittelpunkt von Hand, wenn die Kugel dort zu sehen ist, oder lassen Sie es aus.',
  },
  ballBroke: {
    message: 'Die Kugel ist bis Bild {whole} ganz; ab Bild {broken} sind es Stücke.',
    remedy: 'Die Bilder davor werden verwendet; filmen Sie mehr vom Flug vor dem Zerbrechen.',
  },
  offPath: {
    message:
      '{form, select, strayed {Was in Bild {frame} gemessen wurde, ist nicht, was verfolgt wurde: Es liegt mehr als {off} px daneben.} along {Was in Bild {frame} gemessen wurde, liegt {off} px längs des Flugs neben der Bahn der anderen Bilder.} other {Was in Bild {frame} gemessen wurde, liegt {off} px quer zum Flug neben der Bahn der anderen Bilder.}}',
    remedy:
      'Gehen Sie zum Bild: Setzen Sie den Mittelpunkt von Hand, wenn die Kugel dort zu sehen ist, oder lassen Sie es aus.',
  },
  fewFaces: {
    message:
      '{frames, plural, =0 {Kein Bild zeigt} one {Nur # Bild zeigt} other {Nur # Bilder zeigen}} die Kugel von vorn ganz; um zu sagen, wie sie sich dreht, braucht es mindestens {fewest}.',
    remedy: 'Filmen Sie ein längeres Stück des freien Flugs.',
  },
  markSmeared: {
    message:
      'Während einer Belichtung bewegt sich die Kugel um mehr als das {most}-Fache ihres Radius, was eine Marke auf ihr verwischt.',
    remedy: 'Belichten Sie kürzer, mit mehr Licht.',
  },
  spinAmbiguous: {
    message:
      'Die Marke sieht in jedem Bild gleich aus, wenn sich die Kugel mit {other} statt {rate} rad/s dreht; angegeben ist die langsamere Drehung.',
    remedy:
      'Filmen Sie mit höherer Bildrate, oder verwenden Sie eine Marke, die erst nach einer ganzen Umdrehung wieder gleich aussieht: einen einzelnen Punkt.',
  },
};
