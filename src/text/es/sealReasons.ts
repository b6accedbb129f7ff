import type { Catalogue } from '../catalogue';

/** What film and sound do not tell of the burst. */
export const sealReasons: Catalogue['reasons'] = {
  bulgeNotSeen: {
    message:
      'Ningún fotograma anterior al desgarro muestra la membrana fuera de su posición de reposo.',
  },
  bulgeTooFaint: {
    message: 'La membrana destaca demasiado poco de la escena para poder seguirla.',
  },
  onsetBeforeClip: {
    message: 'La membrana ya se mueve cuando empieza el clip.',
  },
  restHidden: {
    message:
      'La escena tras la membrana difiere de la membrana en reposo más que su primer movimiento.',
  },
  burstNotSeen: {
    message: 'La membrana se mueve, pero ningún fotograma la muestra rota.',
    remedy:
      'Compruebe la zona de la membrana, o indique a mano los fotogramas en torno a la rotura.',
  },
  sealOpenFromStart: {
    message: 'Ya en los primeros fotogramas vuelan trozos de la membrana.',
    remedy: 'Use un clip que empiece antes de que se rompa la membrana.',
  },
  sealRestHidden: {
    message:
      'Los primeros fotogramas difieren de la escena con la que se compara la membrana, lo que oculta el abombamiento.',
    remedy:
      'Use un clip que empiece con la membrana en reposo, o indique a mano los fotogramas en torno a la rotura.',
  },
  noSealInView: {
    message: 'Se indica que no hay ninguna membrana de la boca a la vista.',
  },
  rearSealPlaneMissing: {
    message: 'La membrana trasera está indicada sin su plano, y nada más revela dónde está.',
    remedy: 'Indique un punto del plano de la membrana trasera.',
  },
  noBackstop: {
    message: 'El disparo no indica ningún tope.',
  },
  impactBeforeExit: {
    message: 'Según el sonido, la bola golpea el tope antes de salir por la boca.',
    remedy: 'Compruebe el desfase entre sonido e imagen y las distancias del micrófono y del tope.',
  },
  soundUnplaced: {
    message:
      'La película no muestra ni la rotura ni la salida, así que se toma por rotura el primer sonido fuerte de la pista.',
    remedy: 'Escuche la pista: la perforación de una membrana trasera se oye antes de la rotura.',
  },
  burstFramesOutside: {
    message:
      'Se indica la membrana entera en el fotograma {whole} y abierta en el {open}; el clip muestra los fotogramas {first} a {last}.',
    remedy: 'Indique dos fotogramas del clip, primero el de la membrana entera.',
  },
  burstAmbiguous: {
    message:
      'El fotograma {faint} muestra un leve indicio de desgarro, el {plain} indicios claros. La rotura se sitúa entre los fotogramas {whole} y {open}.',
    remedy: 'Recorra estos fotogramas e indique a mano los dos en torno a la rotura.',
  },
  burstWithBall: {
    message:
      'En el fotograma {whole} la membrana aún está entera y en el {through} la bola ya ha pasado su plano.',
    remedy: 'Una cadencia mayor separaría los dos sucesos.',
  },
  sealNotSeen: {
    message:
      '{form, select, late {En todos los fotogramas que muestran la membrana, la bola ya ha pasado su plano.} other {En el plano de la membrana no se mueve nada antes de la bola: no hay ninguna membrana a la vista, o se abrió antes de que empezara el clip.}}',
    remedy:
      '{form, select, late {Use un clip que empiece antes de que la bola salga del tubo.} other {Compruebe el plano de la boca y la zona de la membrana, o indique que no hay ninguna membrana a la vista.}}',
  },
  sealRegionOutside: {
    message:
      '{form, select, unset {Para la membrana falta la dirección del vuelo o el tamaño de la bola con que delimitar su zona.} other {La zona de la membrana no deja sitio, en el fotograma de {width} x {height} píxeles, para observarla fuera de su plano.}}',
    remedy:
      '{form, select, unset {Fije la dirección del vuelo y el diámetro de la bola.} other {Mueva el plano de la boca, o dibuje la zona de la membrana de modo que contenga el plano y algo de espacio fuera de él.}}',
  },
  soundDisagrees: {
    message:
      'Según el sonido, la membrana se rompió {by} ms {form, select, later {después} other {antes}} que en la película, más de lo que explican sus incertidumbres.',
    remedy:
      'Compruebe el desfase entre sonido e imagen con una palmada filmada, la distancia del micrófono y los fotogramas de la rotura.',
  },
  microphoneNear: {
    message:
      'El micrófono está a {distance} m de la boca, donde el frente de la onda es más rápido que el sonido y su tiempo se conoce peor.',
    remedy: 'Colóquelo a un metro o más y mida la distancia.',
  },
  soundTooShort: {
    message:
      'La pista de sonido no abarca el momento {what, select, burst {de la rotura} other {del impacto}} con algo de silencio antes.',
    remedy:
      'Al cortar el clip conserve el sonido desde antes hasta después del disparo, y compruebe el desfase entre sonido e imagen.',
  },
  noSoundOnset: {
    message:
      '{what, select, any {El sonido no tiene ningún comienzo cuyo instante pueda determinarse.} burst {Donde debería oírse la rotura, ningún sonido destaca del ruido.} other {Donde debería oírse el impacto, ningún sonido destaca del ruido.}}',
    remedy:
      'Compruebe el desfase entre sonido e imagen, o grabe con el micrófono más cerca y la ganancia fija.',
  },
  soundClipped: {
    message:
      'El sonido {what, select, burst {de la rotura} other {del impacto}} está saturado: sus picos están recortados.',
    remedy: 'Baje el nivel del micrófono o colóquelo más lejos, a una distancia conocida.',
  },
  sealFilmTooLong: {
    message:
      'Hay que mirar más de cerca más de {most} imágenes, demasiadas para seguir una membrana.',
    remedy: 'Recorte el clip al disparo o quite lo demás que se mueve.',
  },
};
