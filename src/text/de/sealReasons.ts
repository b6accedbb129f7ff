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
};
