import type { English, SameShape } from '../catalogue';

export const film: SameShape<English['film']> = {
  label: 'Film',
  keys: 'Plus und Minus zoomen, Null zeigt das ganze Bild, Punkt seine Pixel mit ihren Grauwerten, Umschalt mit Pfeilen verschiebt es, Pfeile nach links und rechts gehen durch die Bilder.',
  place: 'x {x}, y {y} Pixel',
  zoomIn: 'Vergrößern',
  zoomOut: 'Verkleinern',
  pixels: 'Pixel',
  pixelsTitle: 'Vergrößert Pixel, bis ihre Grauwerte lesbar sind.',
  whole: 'Ganzes Bild',
  key: {
    used: 'verwendet',
    byHand: 'von Hand gesetzt',
    notUsed: 'nicht verwendet',
    seed: 'als Kugel angegeben',
    u: 'Unsicherheit u, {factor}-fach vergrößert',
  },
  held: {
    label: 'Bild {frame}, neben dem Film stehen gelassen',
    name: 'Bild {frame}, festgehalten',
    swap: 'Tauschen',
  },
  magnifier: {
    label: 'Lupe',
    told: 'x {x}, y {y}: Grauwert {grey}',
    noGrey: 'keiner',
    grey: 'grau {grey}',
  },
  mark: {
    edge: 'Kante {number}',
    flight: 'Flug',
    seal: 'Membran',
  },
  corner: {
    topLeft: 'links oben',
    topRight: 'rechts oben',
    bottomRight: 'rechts unten',
    bottomLeft: 'links unten',
  },
  handle: {
    lengthFrom: 'Bekannte Länge {number}, erstes Ende',
    lengthTo: 'Bekannte Länge {number}, zweites Ende',
    edgeFrom: 'Gerade Kante {number}, erstes Ende',
    edgeTo: 'Gerade Kante {number}, zweites Ende',
    plane: 'Ecke {number} der Ebene, {corner}',
    muzzlePoint: 'Punkt auf der Mündungsebene',
    muzzleAxis: 'Flugrichtung',
    point: 'Kugelmittelpunkt in Bild {frame}',
    seed: 'Ort der Kugel in Bild {frame}',
    flightCorner: 'Flugbereich, Ecke {corner}',
    sealCorner: 'Membranbereich, Ecke {corner}',
  },
};
