import type { English, SameShape } from '../catalogue';

export const models: SameShape<English['models']> = {
  title: 'Modelos',
  caution:
    'Las predicciones sirven solo para el estudio: no son motivo para considerar seguro un lanzador ni para modificarlo. Tienen prioridad las normas locales y la persona cualificada que supervisa el disparo.',
  ballAndAir: 'La bola y el aire se indican en el paso Bola; también entran en los modelos.',
  model: 'Modelo',
  cards: {
    title: 'Qué suponen los modelos',
    source: 'Fuente: {source}',
    constantForce: {
      title: 'Fuerza constante',
      assumes:
        'La presión exterior empuja la bola por rápido que vaya, hacia un vacío perfecto. No se pone aire en movimiento, no hay fugas, nada roza y no hay nada por delante, tampoco fuera de la boca. No se usan la presión residual, la presión de rotura ni las pérdidas; la membrana se abre cuando la bola la toca. Queda siempre por encima de lo que hace un lanzador.',
      source:
        'Mecánica de manual; dado como cota ingenua por Ayars y Buchholtz, Am. J. Phys. 72 (2004) 961, ec. 1 y 2.',
    },
    momentum: {
      title: 'Cantidad de movimiento de bola y aire',
      assumes:
        'El aire que sigue a la bola adquiere de inmediato su velocidad, con la densidad exterior: no se expande ni tiene ondas. Añadidos mediante términos propios: aire uniforme por delante comprimido sin pérdida de calor, fuga, pérdida en la entrada y rozamientos. Su techo, la raíz de la presión entre la densidad, es propio del modelo y no acota nada.',
      source:
        'Ayars y Buchholtz, Am. J. Phys. 72 (2004) 961, con los términos aquí citados añadidos.',
    },
    gasDynamics: {
      title: 'Dinámica de gases',
      assumes:
        'Las ecuaciones de Euler en una dimensión detrás y delante de la bola, que es un pistón con una holgura que fuga: se siguen las ondas y los choques. Un gas perfecto, uniforme en la sección; la membrana trasera desaparece de inmediato; la membrana de la boca es una pared hasta que se supera su presión de rotura y entonces se abre de inmediato; las paredes no absorben calor; la bola no pierde nada contra los restos de la membrana.',
      source:
        'Toro, Riemann Solvers and Numerical Methods for Fluid Dynamics, 3.ª ed., 2009 (método); Seigel, AGARDograph 91 (1965) (el problema; de memoria).',
    },
    expansion: {
      title: 'Límite de expansión',
      assumes:
        'Junto a la bola, aire expandido sin pérdidas hasta la velocidad de esta, sin tiempo para que corran las ondas: aquello a lo que tiende la dinámica de gases con una bola pesada, y por encima de ella con una ligera. Aire por delante y fuga como en el modelo de la cantidad de movimiento; no se usan la pérdida en la entrada ni el rozamiento de la pared.',
      source:
        'Seigel, The Theory of High Speed Guns, AGARDograph 91 (1965), cámara grande (de memoria; álgebra comprobada).',
    },
  },
  run: {
    stale:
      'El lanzador, la película o la probabilidad de cobertura han cambiado después de calcular los modelos. Prediga de nuevo.',
    cancelled: 'Cancelado: no todos los modelos están listos.',
    running: 'Calculando los modelos',
    predict: 'Predecir',
    again: 'Predecir de nuevo',
  },
  launcher: {
    title: 'Lanzador',
    none: 'Aún no se ha indicado ningún lanzador. Primero van el ánima y la longitud del tubo.',
    losses: 'Inicio, fuga y pérdidas',
    lossesWhat:
      'Valores habituales, salvo que conozca otros mejores; cada uno con su propia incertidumbre.',
    needed: 'necesaria',
    closeToSeal: 'junto a la membrana',
    boreDiameter: 'Diámetro del ánima',
    barrelLength: 'Longitud del tubo, de membrana a membrana',
    residualPressure: 'Presión residual',
    sealBurstPressure: 'Presión de rotura de la membrana',
    startPosition: 'Posición inicial del centro de la bola',
    gapDischarge: 'Descarga de la holgura',
    entranceLoss: 'Pérdida en la entrada',
    wallFriction: 'Rozamiento de la pared',
    ballFriction: 'Rozamiento de la bola, N',
    hint: {
      residualPressure: 'Presión absoluta del aire que queda en el tubo.',
      sealBurstPressure:
        'Cuánto supera la presión interior a la exterior cuando se abre la membrana de la boca.',
      startPosition:
        'Desde la membrana trasera. Si se deja vacío: la bola está a 1 ± 0,5 mm de ella.',
      gapDischarge: 'Coeficiente de la fuga en torno a la bola; 0: sin fuga.',
      entranceLoss: 'Alrededor de 0,5 con borde vivo, cerca de 0 con entrada acampanada.',
      wallFriction: 'Factor de Darcy: alrededor de 0,02 en un tubo liso.',
    },
  },
  view: {
    title: 'Película frente a modelo',
    stale:
      'El lanzador o la película han cambiado: prediga de nuevo. Abajo figura lo que los modelos daban antes.',
    what: 'Cuatro modelos indican a qué velocidad debería disparar este lanzador y cuándo debería abrirse su membrana de la boca, cada uno con la incertidumbre que le dan los datos, junto a lo medido en la película.',
    stateLauncher: 'Indique el lanzador en el panel de datos: ánima, longitud y sus dos presiones.',
  },
  comparison: {
    meaning: {
      agree: 'Película y modelo concuerdan: no difieren más de lo que explican sus incertidumbres.',
      questionable:
        'Película y modelo quizá discrepen: distan {zeta} incertidumbres típicas, lo que el azar explica como mucho una vez en veinte disparos.',
      differ:
        'Película y modelo discrepan: distan {zeta} incertidumbres típicas. Falla un dato, la película o lo que el modelo omite.',
    },
    noSpeed:
      'La película aún no da velocidad de salida, así que no se compara nada con los modelos.',
    speed: 'Velocidad de salida',
    lead: 'Adelanto de la membrana de la boca',
    caption: '{title} ({coverage})',
    from: 'Según',
    difference: 'Película menos modelo',
    filmAndModel: 'Película y modelo',
    film: 'Película',
    notMeasured: 'sin medir',
    waiting: 'calculándose',
    verdict: {
      agree: 'concuerdan',
      questionable: 'quizá difieran',
      differ: 'difieren',
    },
    what: 'ζ es la diferencia dividida entre su incertidumbre típica: hasta 2 concuerdan, a partir de 3 difieren. Eₙ es la diferencia dividida entre su incertidumbre expandida para el 95 %: por encima de 1 difieren. La incertidumbre de un modelo es la de sus datos; lo que omite no está incluido. Película y modelo se toman por independientes.',
    en: 'Eₙ',
    ofModel: '{model}: {message}',
  },
  plots: {
    title: 'Velocidad de salida y longitud del tubo',
    axis: 'longitud del tubo',
    thisShot: 'este disparo',
  },
  residual: {
    title: 'Lo que cuesta el aire residual',
    name: 'Velocidad de salida y presión residual',
    caption:
      'Velocidad de salida con otras presiones residuales, todo lo demás según lo indicado ({coverage})',
    share: 'Parte del aire exterior',
    pressure: 'Presión residual',
    doesNotLeave: 'no sale',
    pressureIs: '{number} hPa',
  },
  gap: {
    title: 'Qué tendría que estar mal',
    byModel: 'Según el modelo',
    waiting: 'Calculándose; primero van las velocidades.',
    noSpeed: 'Mida primero la película: no hay velocidad con que comparar el modelo.',
    doesNotLeave:
      'Según este modelo la bola no sale, de modo que ninguna diferencia puede salvarse.',
    caption: 'Un dato cada vez, los demás según lo indicado; primero el menos rebuscado',
    input: 'Dato',
    needed: 'Tendría que ser',
    off: 'Desviación',
    inU: 'En incertidumbres propias',
    exact: 'indicado como exacto',
  },
};
