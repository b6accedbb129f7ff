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
};
