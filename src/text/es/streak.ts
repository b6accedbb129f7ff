import type { English, SameShape } from '../catalogue';

export const streak: SameShape<English['streak']> = {
  label: 'Imagen de trazas: fotograma',
  now: 'fotograma {frame} de {count}',
  keys: 'Flechas arriba y abajo recorren los fotogramas, más y menos estiran el tiempo, cero muestra todos los fotogramas.',
  note: 'Una línea por fotograma; el tiempo corre hacia abajo.',
  steepNote:
    'Una línea por fotograma; el tiempo corre hacia abajo. Vuelo empinado: en horizontal está su eje, con escala propia.',
  pointed: 'Fotograma {frame}, {along} px a lo largo del eje de vuelo',
  pointedTime: 'Fotograma {frame}, {time}, {along} px a lo largo del eje de vuelo',
  stretch: 'Estirar el tiempo',
  compress: 'Comprimir el tiempo',
  all: 'Todos los fotogramas',
  slope: '{slope} px por fotograma',
  slopeSpeed: '{slope} px por fotograma, unos {speed}',
  lost: '{n, plural, one {# fotograma perdido} other {# fotogramas perdidos}}',
  muzzle: 'plano de la boca',
  frame: 'fotograma {frame}',
  line: {
    from: 'Línea oblicua, extremo anterior',
    whole: 'Línea oblicua entera',
    to: 'Línea oblicua, extremo posterior',
    at: 'fotograma {frame}, a {along} píxeles por el eje',
    atSlope: 'fotograma {frame}, a {along} píxeles por el eje; {slope}',
  },
};
