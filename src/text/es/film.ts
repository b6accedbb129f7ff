import type { English, SameShape } from '../catalogue';

export const film: SameShape<English['film']> = {
  label: 'Película',
  keys: 'Más y menos amplían y reducen, cero muestra el fotograma entero, punto sus píxeles con sus grises, Mayús con flechas lo mueve, flechas izquierda y derecha recorren los fotogramas.',
  place: 'x {x}, y {y} píxeles',
  zoomIn: 'Ampliar',
  zoomOut: 'Reducir',
  pixels: 'Píxeles',
  pixelsTitle: 'Amplía los píxeles hasta que se lean sus niveles de gris.',
  whole: 'Fotograma entero',
  key: {
    used: 'usado',
    byHand: 'puesto a mano',
    notUsed: 'no usado',
    seed: 'indicado como bola',
    u: 'incertidumbre u, ampliada {factor} veces',
  },
  held: {
    label: 'Fotograma {frame}, retenido junto a la película',
    name: 'fotograma {frame}, retenido',
    swap: 'Intercambiar',
  },
  magnifier: {
    label: 'Lupa',
    told: 'x {x}, y {y}: gris {grey}',
    noGrey: 'ninguno',
    grey: 'gris {grey}',
  },
  mark: {
    edge: 'borde {number}',
    flight: 'vuelo',
    seal: 'membrana',
  },
  corner: {
    topLeft: 'superior izquierda',
    topRight: 'superior derecha',
    bottomRight: 'inferior derecha',
    bottomLeft: 'inferior izquierda',
  },
  handle: {
    lengthFrom: 'Longitud conocida {number}, primer extremo',
    lengthTo: 'Longitud conocida {number}, segundo extremo',
    edgeFrom: 'Borde recto {number}, primer extremo',
    edgeTo: 'Borde recto {number}, segundo extremo',
    plane: 'Esquina {number} del plano, {corner}',
    muzzlePoint: 'Punto del plano de la boca',
    muzzleAxis: 'Dirección del vuelo',
    point: 'Centro de la bola en el fotograma {frame}',
    seed: 'Lugar de la bola en el fotograma {frame}',
    flightCorner: 'Zona de vuelo, esquina {corner}',
    sealCorner: 'Zona de la membrana, esquina {corner}',
  },
};
