import type { English, SameShape } from '../catalogue';
import { advice } from './advice';
import { inputs, settings } from './inputs';
import { betweenFrames, sources, tables } from './tables';
import { findings, fit, statement } from './told';

export const report: SameShape<English['report']> = {
  title: 'Informe',
  interval: 'de {low} a {high}',
  nothingYet: 'Aún no se ha medido nada: un informe se hace a partir de un resultado.',
  backToShot: 'Volver al disparo',
  stale:
    'Los datos han cambiado desde la medición. El informe corresponde a los datos anteriores y su resultado.',
  fetching: 'Obteniendo fotogramas de la película…',
  pageTitle: 'Informe de {shot}',
  bar: {
    extent: 'Extensión',
    summary: 'Una página',
    full: 'Informe completo',
    print: 'Imprimir o guardar como PDF…',
    savePage: 'Guardar como página web…',
    copy: 'Copiar el enunciado',
    result: 'CSV del resultado…',
    centres: 'CSV de los centros…',
    budget: 'CSV del balance…',
    resultJson: 'JSON del resultado…',
    shotFile: 'Archivo de disparo…',
    saveSvg: 'Guardar SVG…',
    savePng: 'Guardar PNG…',
    kind: { page: 'Página web', table: 'Tabla', drawing: 'Dibujo', picture: 'Imagen' },
  },
  pictures: {
    puttingTogether: 'Componiendo el vuelo…',
    flight: 'La bola en muchos fotogramas de su vuelo, reunidos en una imagen',
    flightCaption:
      'El vuelo: fotogramas cuyas bolas quedan una junto a otra, sobre la escena inmóvil',
    caption:
      'Fotograma {frame}, {kind, select, whole {último con la membrana entera} open {primero con la membrana abierta} other {el más próximo a la salida}}',
    muzzle:
      'Película en torno a la boca en el fotograma {frame}, {kind, select, whole {último con la membrana entera} open {primero con la membrana abierta} other {el más próximo a la salida}}',
  },
  document: {
    unnamed: 'Disparo sin nombre',
    what: 'Velocidad de salida y rotura de la membrana a partir de película de alta velocidad',
    section: {
      film: 'Qué muestra la película',
      warnings: 'Advertencias',
      redo: 'Para repetirlo',
      motion: 'Movimiento',
      findings: 'Qué más muestra la película',
      uncertainty: 'Incertidumbre',
      fit: 'Ajuste',
      stated: 'Datos indicados',
      centres: 'Centros',
      cautions: 'Precauciones',
    },
    largest:
      'La incertidumbre de la velocidad de salida procede sobre todo de: {sources} (de la varianza).',
    noWarnings: 'La medición no dio ninguna.',
    moreWarnings: 'Y {more} más: véase el informe completo.',
    advice: 'Lo que más ayudaría:',
    adviceLine: '{share} {source}. {remedy}',
    notes: 'Notas: {notes}',
    motion: 'Movimiento: {model}.',
    fact: {
      software: 'Programa',
      madeOn: 'Informe hecho el',
      footage: 'Grabación',
      sha256: 'SHA-256 de la grabación',
      film: 'Película',
      decoder: 'Decodificada por',
      scale: 'Escala encontrada',
      shotVersion: 'Versión del archivo de disparo',
    },
    notWorkedOut: 'no calculado',
    filmIs: '{container}, {codec}, {width} × {height} píxeles, {bits} bits, {frames} fotogramas',
    scaleIs: '{value} mm/px, incertidumbre típica {u} mm/px',
    pathAndMore: '{path} y {more} más',
    redoBriefly:
      'exitframe {software}, grabación {path} con SHA-256 {sha256}, semilla {seed}.{known, select, yes { Movimiento ajustado: {model}.} other {}} El informe completo contiene cada dato con su incertidumbre y el archivo de disparo.',
    redo: 'Mismos datos, mismo resultado: ponga el archivo de disparo de abajo junto a {path} y ejecute npm run --silent reduce con su nombre, o abra ambos en exitframe. Las longitudes están en metros, los tiempos en segundos y las posiciones en la imagen en píxeles.',
  },
  statement,
  findings,
  fit,
  tables,
  sources,
  betweenFrames,
  advice,
  inputs,
  settings,
};
