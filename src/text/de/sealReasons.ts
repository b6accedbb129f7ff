import type { Catalogue } from '../catalogue';

/** What film and sound do not tell of the burst. */
export const sealReasons: Catalogue['reasons'] = {
  bulgeNotSeen: {
    message: 'Kein Bild vor dem Riss zeigt die Membran außerhalb ihrer Ruhelage.',
  },
  bulgeTooFaint: {
    message: 'Die Membran hebt sich zu wenig von der Szene ab, um verfolgt zu werden.',
  },
  onsetBeforeClip: {
    message: 'Die Membran bewegt sich schon, wenn der Clip beginnt.',
  },
  restHidden: {
    message:
      'Die Szene hinter der Membran weicht stärker von der ruhenden Membran ab als deren erste Bewegung.',
  },
  burstNotSeen: {
    message: 'Die Membran bewegt sich, aber kein Bild zeigt sie gerissen.',
    remedy:
      'Prüfen Sie den Bereich der Membran, oder geben Sie die Bilder um das Bersten von Hand an.',
  },
  sealOpenFromStart: {
    message: 'Schon in den ersten Bildern fliegen Stücke der Membran.',
    remedy: 'Verwenden Sie einen Clip, der vor dem Bersten der Membran beginnt.',
  },
  sealRestHidden: {
    message:
      'Die ersten Bilder weichen von der Szene ab, mit der die Membran verglichen wird; das verdeckt die Wölbung.',
    remedy:
      'Verwenden Sie einen Clip, der mit ruhender Membran beginnt, oder geben Sie die Bilder um das Bersten von Hand an.',
  },
  noSealInView: {
    message: 'Laut Angabe ist keine Mündungsmembran im Bild.',
  },
  rearSealPlaneMissing: {
    message:
      'Die hintere Membran ist ohne ihre Ebene angegeben, und nichts anderes verrät, wo diese liegt.',
    remedy: 'Geben Sie einen Punkt auf der Ebene der hinteren Membran an.',
  },
  noBackstop: {
    message: 'Für den Schuss ist keine Prallwand angegeben.',
  },
  impactBeforeExit: {
    message: 'Dem Ton nach trifft die Kugel auf die Prallwand, bevor sie die Mündung verlässt.',
    remedy:
      'Prüfen Sie den Versatz zwischen Ton und Bild und die Abstände von Mikrofon und Prallwand.',
  },
  soundUnplaced: {
    message:
      'Der Film zeigt weder Bersten noch Austritt; daher gilt das erste laute Geräusch der Tonspur als das Bersten.',
    remedy:
      'Hören Sie die Tonspur an: Wird eine hintere Membran durchstoßen, ist das vor dem Bersten zu hören.',
  },
  burstFramesOutside: {
    message:
      'Die Membran ist in Bild {whole} als ganz und in Bild {open} als offen angegeben; der Clip zeigt die Bilder {first} bis {last}.',
    remedy: 'Geben Sie zwei Bilder des Clips an, das mit der ganzen Membran zuerst.',
  },
  burstAmbiguous: {
    message:
      'Bild {faint} zeigt ein schwaches Anzeichen eines Risses, Bild {plain} deutliche. Das Bersten wird zwischen den Bildern {whole} und {open} angenommen.',
    remedy: 'Gehen Sie diese Bilder durch, und geben Sie die beiden um das Bersten von Hand an.',
  },
  burstWithBall: {
    message:
      'In Bild {whole} ist die Membran noch ganz, und in Bild {through} ist die Kugel schon durch ihre Ebene.',
    remedy: 'Eine höhere Bildrate würde die beiden Ereignisse trennen.',
  },
  sealNotSeen: {
    message:
      '{form, select, late {In jedem Bild, das die Membran zeigt, ist die Kugel schon hinter ihrer Ebene.} other {An der Membranebene bewegt sich vor der Kugel nichts: Es ist keine Membran im Bild, oder sie öffnete sich, bevor der Clip beginnt.}}',
    remedy:
      '{form, select, late {Verwenden Sie einen Clip, der beginnt, bevor die Kugel das Rohr verlässt.} other {Prüfen Sie die Mündungsebene und den Bereich der Membran, oder geben Sie an, dass keine Membran im Bild ist.}}',
  },
  sealRegionOutside: {
    message:
      '{form, select, unset {Für die Membran fehlt die Flugrichtung oder die Größe der Kugel, um ihren Bereich festzulegen.} other {Der Bereich der Membran lässt im Bild von {width} x {height} Pixeln keinen Platz, um die Membran außerhalb ihrer Ebene zu beobachten.}}',
    remedy:
      '{form, select, unset {Legen Sie Flugrichtung und Kugeldurchmesser fest.} other {Verschieben Sie die Mündungsebene, oder ziehen Sie den Bereich der Membran so, dass er die Ebene und etwas Platz davor enthält.}}',
  },
  soundDisagrees: {
    message:
      'Dem Ton nach barst die Membran {by} ms {form, select, later {später} other {früher}} als im Film, mehr als ihre Unsicherheiten erklären.',
    remedy:
      'Prüfen Sie den Versatz zwischen Ton und Bild mit einem gefilmten Klatschen, den Abstand des Mikrofons und die Bilder des Berstens.',
  },
  microphoneNear: {
    message:
      'Das Mikrofon ist {distance} m von der Mündung entfernt, wo die Front des Knalls schneller als der Schall und ihre Laufzeit weniger gut bekannt ist.',
    remedy: 'Stellen Sie es mindestens einen Meter entfernt auf, und messen Sie den Abstand.',
  },
  soundTooShort: {
    message:
      'Die Tonspur enthält den Augenblick {what, select, burst {des Berstens} other {des Aufpralls}} nicht mit etwas Ruhe davor.',
    remedy:
      'Behalten Sie beim Schneiden des Clips den Ton von vor bis nach dem Schuss, und prüfen Sie den Versatz zwischen Ton und Bild.',
  },
  noSoundOnset: {
    message:
      '{what, select, any {Im Ton ist kein Beginn, dessen Zeitpunkt sich bestimmen ließe.} burst {Wo das Bersten zu hören sein müsste, hebt sich kein Ton vom Rauschen ab.} other {Wo der Aufprall zu hören sein müsste, hebt sich kein Ton vom Rauschen ab.}}',
    remedy:
      'Prüfen Sie den Versatz zwischen Ton und Bild, oder nehmen Sie mit näherem Mikrofon und fester Verstärkung auf.',
  },
  soundClipped: {
    message:
      'Der Ton {what, select, burst {des Berstens} other {des Aufpralls}} ist übersteuert: Seine Spitzen sind abgeschnitten.',
    remedy:
      'Steuern Sie das Mikrofon schwächer aus, oder stellen Sie es in bekanntem Abstand weiter weg.',
  },
  sealFilmTooLong: {
    message:
      'Mehr als {most} Bilder sind genauer anzusehen; das sind zu viele, um einer Membran zu folgen.',
    remedy:
      'Schneiden Sie den Clip auf den Schuss zu, oder entfernen Sie, was sich sonst noch bewegt.',
  },
};
