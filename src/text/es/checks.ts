import type { Catalogue } from '../catalogue';

/** What was looked at in the fit. */
export const checks: Catalogue['reasons'] = {
  chiSquare: {
    message:
      '{form, select, none {No queda ningún fotograma con el que comprobar la dispersión.} more {Los centros se dispersan {ratio} veces lo que permite su incertidumbre indicada.} less {Los centros se dispersan solo {ratio} veces su incertidumbre indicada: esta es demasiado grande.} other {Los centros se dispersan en torno a la curva como hace esperar su incertidumbre ({ratio} veces).}}',
    remedy:
      'Busque un patrón en los residuos, rechace fotogramas con el contorno alterado o compruebe el tiempo.',
  },
  runs: {
    message:
      '{form, select, tooFew {Muy pocos fotogramas para buscar un patrón en los residuos.} chance {Los residuos cambian de signo tantas veces como quiere el azar.} long {Los residuos mantienen su signo en tramos largos: la curva no sigue el recorrido.} other {Los residuos alternan de signo más de lo que quiere el azar: los fotogramas vecinos no son independientes.}}',
    remedy:
      '{form, select, long {Elija el modelo automático, compruebe el objetivo o ajuste un tramo más corto.} other {Compruebe si la grabación es entrelazada o contiene fotogramas hechos a partir de sus vecinos.}}',
  },
  serialCorrelation: {
    message:
      '{form, select, tooFew {Muy pocos fotogramas para comprobar la correlación entre vecinos.} not {Los residuos vecinos no están correlacionados ({by}).} other {Los residuos vecinos están correlacionados ({by}): la incertidumbre del ajuste es entonces demasiado pequeña.}}',
    remedy: 'Elija el modelo automático y mire si algo se mueve con la bola.',
  },
  leverage: {
    message:
      '{form, select, alone {El fotograma {frame} decide por sí solo una parte del ajuste (apalancamiento {say}): ningún otro mostraría un error de su centro.} other {Sin el fotograma {frame}, el que más pesa en el ajuste (apalancamiento {say}), la velocidad sería de unos {speed}{form, select, within {} other {: más lejos de lo que explica la incertidumbre de su centro}}.}}',
    remedy:
      '{form, select, alone {Filme a mayor cadencia, para que haya más fotogramas donde está este.} other {Mire el centro del fotograma {frame} y rechácelo si su contorno está alterado.}}',
  },
  trendAlongFrame: {
    message:
      '{form, select, tooFew {Muy pocos fotogramas para buscar una tendencia a lo largo de la imagen.} none {Los residuos no muestran tendencia a lo largo de la imagen.} other {Los residuos se curvan a lo largo de la imagen: la escala no es igual en toda ella, o el recorrido se curva.}}',
    remedy:
      'Calibre el objetivo, marque el plano del vuelo o excluya los fotogramas cercanos al borde de la imagen.',
  },
  models: {
    message:
      '{versions, plural, one {El resultado procede de una sola versión de la ecuación de movimiento.} other {El resultado es la media de # versiones de la ecuación de movimiento, ponderada por lo bien que encaja cada una.}}',
  },
  muzzleLoss: {
    message:
      'Además de la resistencia del aire, la bola pierde {loss} de su velocidad cerca de la boca, conocido con {u}.',
  },
  leftOut: {
    message:
      '{leftOut, plural, =0 {Se usaron los {used, plural, other {#}} centros.} other {Se usaron {used, plural, other {#}} centros y se excluyeron #; cada uno dice por qué.}}',
  },
  monteCarlo: {
    message:
      '{form, select, confirmed {La comprobación por Monte Carlo confirma el intervalo de la velocidad de salida.} other {El intervalo de Monte Carlo de la velocidad de salida no es del todo el del balance, y es el que se indica.}}',
  },
  speedsUp: {
    message:
      '{form, select, thing {Algo del tamaño correcto en los fotogramas {first} a {last} se acelera en vuelo libre, en un {change}.} other {El recorrido ajustado se acelera tras la salida, lo que no hace una bola libre.}}',
    remedy:
      'Compruebe escala, objetivo y tiempo, o excluya los fotogramas cercanos al borde de la imagen.',
  },
};
