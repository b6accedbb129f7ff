import type { English, SameShape } from '../catalogue';

export const seal: SameShape<English['panels']['seal']> = {
  title: 'Membran',
  inView: 'Die Membran an der Mündung ist im Bild',
  notInView: 'Keine Membran im Bild: Berstzeitpunkt und Vorlauf werden nicht angegeben.',
  foundWhen: 'Das Bersten wird bei der Messung des Films gefunden, im Schritt Kugel.',
  burst: 'Bersten',
  instant: '{time} ({coverage})',
  burstIs: '{time} ({coverage}) nach Bild 0',
  bulge: 'Beginn der Wölbung',
  lastWholeIs: 'Zuletzt ganz: Bild {frame}',
  firstOpenIs: 'Zuerst offen: Bild {frame}',
  where: 'Wo sie beobachtet wird',
  regionFound: 'Der Bereich ergibt sich aus der Mündungsebene.',
  region: '{width} × {height} px ab x {x}, y {y}.',
  find: 'Aus der Mündungsebene bestimmen',
  off: 'Die Membran liegt außerhalb der Mündungsebene',
  planeX: 'x der Membranebene',
  planeY: 'y',
  planeU: '± u entlang des Flugs',
  byHand: 'Bersten von Hand festgelegt',
  hereAndNext: 'In diesem Bild ganz, im nächsten offen',
  replaces: 'Ersetzt, was gefunden wurde.',
  lastWhole: 'Zuletzt ganz: Bild',
  firstOpen: 'Zuerst offen: Bild',
  useFound: 'Das gefundene Bersten verwenden',
};

export const sound: SameShape<English['panels']['sound']> = {
  title: 'Ton',
  times: 'Die Tonspur liefert die Zeitpunkte von Bersten und Aufprall',
  none: 'Diese Aufnahme hat keine Tonspur.',
  offset: 'Versatz des Tons',
  offsetHint:
    'Zu einer Zeit auf der Tonspur addiert, ergibt er die Zeit im Film. Ein gefilmtes Klatschen verrät ihn.',
  microphone: 'Mikrofon bis Mündung',
  backstop: 'Prallwand bis Mündung',
  noBackstop: 'keine Prallwand',
  backstopHint: 'Entlang des Flugs. Damit ergibt der Aufprall eine mittlere Geschwindigkeit.',
  toBackstop: 'Mikrofon bis Prallwand',
  notMeasured: 'nicht gemessen',
  toBackstopHint:
    'Nicht gemessen, kann der Abstand alles sein, was die beiden anderen zulassen; die mittlere Geschwindigkeit ist dann viel unsicherer.',
};
