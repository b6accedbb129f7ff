import type { Catalogue } from '../catalogue';

/** What a planned shot would not show well. */
export const planReasons: Catalogue['reasons'] = {
  planInsideMuzzleZone: {
    message:
      'Das Bildfeld endet innerhalb von drei Kugeldurchmessern ab der Mündung, wo sich Luftwiderstand und Verlust an der Mündung nicht trennen lassen.',
    remedy: 'Vergrößern Sie das Bildfeld, oder lassen Sie weniger davon vor der Mündung.',
  },
  planLengthOutOfView: {
    message: 'Die bekannte Länge passt nicht ins Bildfeld.',
    remedy: 'Nehmen Sie eine kürzere, oder vergrößern Sie das Bildfeld.',
  },
  planMuzzleOutside: {
    message: 'Die Mündungsebene liegt außerhalb des Bildfelds.',
    remedy: 'Lassen Sie weniger Platz vor der Mündung, oder vergrößern Sie das Bildfeld.',
  },
  planParallaxUnknown: {
    message:
      'Ohne den Kameraabstand bleibt die Tiefe der bekannten Länge in der Unsicherheit außer Acht.',
    remedy: 'Messen Sie vom Objektiv zur Fluglinie.',
  },
  noModes: {
    message: 'Es ist keine Betriebsart angegeben.',
    remedy: 'Schreiben Sie eine Zeile je Betriebsart: 12000 1024 x 256.',
  },
  planBallTooLarge: {
    message:
      'Die Kugel ({diameter}) passt nicht in die {across} hinter der Mündung mal {high}, die das Bild zeigt.',
    remedy: 'Vergrößern Sie das Bildfeld, oder verwenden Sie mehr Zeilen.',
  },
  planBallTooSmall: {
    message: 'Die Kugel misst {across} px; mindestens {least} px sind nötig.',
    remedy: 'Verkleinern Sie das Bildfeld, oder verwenden Sie mehr Pixel längs davon.',
  },
  planBallSmall: {
    message:
      'Der Radius der Kugel beträgt {radius} px; unter {small} px ist ihr Umriss kaum von ihrer Unschärfe zu unterscheiden.',
    remedy: 'Verkleinern Sie das Bildfeld, oder verwenden Sie mehr Pixel längs davon.',
  },
  planExposureTooLong: {
    message: 'Die Belichtungszeit von {exposure} ist länger als ein Bild, {interval}.',
    remedy: 'Belichten Sie kürzer als {interval}, oder senken Sie die Bildrate.',
  },
  planReadoutTooLong: {
    message: '{lines} Zeilen auszulesen dauert {readout}, länger als ein Bild, {interval}.',
    remedy:
      'Prüfen Sie die Auslesezeit je Zeile, verwenden Sie weniger Zeilen, oder senken Sie die Bildrate.',
  },
  planTooFast: {
    message:
      'Eine Kugel mit {speed} verlässt das Bildfeld innerhalb von {frames} Bildern; eine Geschwindigkeit braucht {fewest}.',
    remedy: 'Filmen Sie mit mindestens {rate} Bildern/s, oder vergrößern Sie das Bildfeld.',
  },
  planFewFrames: {
    message:
      'Eine Kugel mit {speed} ist {frames} Bilder lang zu sehen: Ein Ausreißer unter so wenigen ist nicht zu erkennen.',
    remedy: 'Filmen Sie mit höherer Bildrate, oder vergrößern Sie das Bildfeld.',
  },
  planLongBlur: {
    message:
      'Eine Kugel mit {speed} bewegt sich während einer Belichtung um das {blur}-Fache ihres Radius: Ihre Ränder verblassen, und ihr Mittelpunkt ist weniger gut bekannt, als hier erwartet wird.',
    remedy: 'Belichten Sie höchstens {exposure}, mit dem {blur}-Fachen an Licht.',
  },
  planNoContrast: {
    message:
      'Die Kugel hebt sich um das {contrast}-Fache des Rauschens ab; nötig ist mindestens das {least}-Fache.',
    remedy:
      'Verwenden Sie mehr Licht, eine längere Belichtung oder einen Hintergrund, der sich stärker von der Kugel unterscheidet.',
  },
  planLowContrast: {
    message:
      'Die Kugel hebt sich nur um das {contrast}-Fache des Rauschens ab: Einzelne Bilder können verworfen werden.',
    remedy:
      'Verwenden Sie mehr Licht, eine längere Belichtung oder einen Hintergrund, der sich stärker von der Kugel unterscheidet.',
  },
  planTooDark: {
    message: 'Das Bild bekommt {share} des Lichts, bei dem der Kontrast abgelesen wurde.',
    remedy: 'Verwenden Sie das {light}-Fache des damaligen Lichts, oder belichten Sie länger.',
  },
  planTooBright: {
    message:
      '{form, select, may {Das Bild bekommt das {times}-Fache des Lichts, bei dem der Kontrast abgelesen wurde: Die Kugel kann weiß werden.} other {Kugel oder Hintergrund werden weiß: Die Kante wird abgeschnitten.}}',
    remedy: 'Verwenden Sie das {light}-Fache des damaligen Lichts.',
  },
  planTooFewFrames: {
    message:
      'Die Kugel ist hinter der Mündung in {frames, plural, =0 {keinem Bild} one {# Bild} other {# Bildern}} zu sehen; eine Geschwindigkeit braucht mindestens {fewest}.',
    remedy: 'Planen Sie eine höhere Bildrate oder ein weiteres Bildfeld.',
  },
  cameraTooSlow: {
    message: 'Die Kamera nimmt bei {rate} Bildern/s kein Bild auf.',
    remedy: 'Prüfen Sie die Pixelrate oder die Tabelle der Betriebsarten.',
  },
};
