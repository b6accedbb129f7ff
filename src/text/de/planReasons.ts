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
};
