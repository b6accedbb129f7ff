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
};
