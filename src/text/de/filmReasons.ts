import type { Catalogue } from '../catalogue';

/** What the film shows that a person should hear of. */
export const filmReasons: Catalogue['reasons'] = {
  lightFlickers: {
    message:
      'Die Helligkeit der ruhenden Szene schwankt zwischen {dimmest} und {brightest} ihres üblichen Werts.',
    remedy:
      'Beleuchten Sie die Szene mit einer Gleichstromlampe, oder prüfen Sie, ob die Kamera stillstand.',
  },
  framesRepeated: {
    message:
      'Die Kugel steht zwischen Bildern still ({between}): Ein Bild scheint wiederholt zu sein.',
    remedy:
      'Nehmen Sie die Originaldatei der Kamera statt einer umgewandelten Kopie, oder verwerfen Sie die Wiederholungen.',
  },
  longBlur: {
    message:
      'Während einer Belichtung bewegt sich die Kugel um {blur} Pixel, mehr als ihren Durchmesser.',
    remedy: 'Belichten Sie kürzer, mit mehr Licht.',
  },
  ballSaturated: {
    message:
      'Die Kugel ist in {saturated} von {frames} Bildern überbelichtet; ihr Umriss kann verschoben sein.',
    remedy: 'Filmen Sie mit weniger Licht, kleinerer Blende oder kürzerer Belichtung.',
  },
  filmUnchecked: {
    message:
      'Der Decoder des Browsers zeigt manchen Schaden, ohne ihn zu melden, und der zweite Decoder, ein eigener Hintergrundprozess, konnte den Film nicht prüfen. {because}',
    remedy: 'Messen Sie noch einmal, oder werten Sie den Schuss auf der Kommandozeile aus.',
  },
  faultyPixels: {
    message:
      'Tote, zu helle oder flackernde Pixel dort, wo die Kugel vorbeikommt: {pixels}. Sie bleiben in jeder Anpassung außer Acht.',
    remedy:
      'Für diesen Schuss ist nichts zu tun. Führen Sie vor dem nächsten den Schwarzabgleich der Kamera bei abgedecktem Objektiv neu durch, oder verschieben Sie das Bildfeld so, dass der Flug sie meidet.',
  },
  cameraShakes: {
    message:
      'Das Bild wackelt um {rms} px (quadratisches Mittel), höchstens {most} px; die Mittelpunkte sind dafür korrigiert, eine Drehung um die Blickrichtung ist es nicht.',
    remedy: 'Stellen Sie die Kamera getrennt vom Werfer auf eine schwerere Stütze.',
  },
  launcherMoves: {
    message:
      'Bevor die Kugel austritt, bewegt sich das Ende des Werfers um bis zu {most} px gegen die Szene um ihn; die Mündungsebene gilt als ruhend.',
    remedy:
      'Klemmen Sie den Werfer fest, oder markieren Sie die Mündung dort, wo sie beim Austritt der Kugel steht.',
  },
};
