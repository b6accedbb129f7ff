import type { English, SameShape } from '../catalogue';

export const statement: SameShape<English['report']['statement']> = {
  detail:
    'Velocidad del centro de la bola a lo largo del vuelo al cruzar el plano de la boca; intervalo {interval}, incertidumbre típica {u}{known, select, yes {, {dof} grados efectivos de libertad} other {}}.',
  lead: 'La membrana se abrió <strong>{lead}</strong> {order, select, before {antes} other {después}} de que saliera el centro de la bola.',
  sealOpenedAt: 'Apertura de la membrana',
  centreLeftAt: 'Salida del centro',
  leadingPoint: 'Punto delantero en la membrana',
  fromOpening: '{time} {order, select, after {después} other {antes}} de abrirse la membrana',
  notFound: 'no encontrado',
  noVelocity: 'No se puede indicar una velocidad de salida: {reason}',
  noLead: 'No se puede indicar cuánto antes que la bola se abrió la membrana: {reason}',
  warnings:
    'La medición lleva {count, plural, one {una advertencia que debería citarse} other {# advertencias que deberían citarse}} con ella.',
  quoted:
    'El centro de la bola salió por la boca a {value}, con una incertidumbre típica de {u}; el intervalo de {low} a {high} contiene la velocidad verdadera con una probabilidad del {coverage}{known, select, yes { ({dof} grados efectivos de libertad)} other {}}.',
  quotedLead:
    'La membrana de la boca se abrió {lead} {order, select, before {antes} other {después}} de que saliera el centro de la bola, con una incertidumbre típica de {u}{open, select, yes {; dentro de su intervalo del {coverage} pudo abrirse antes o después.} other { (intervalo del {coverage}: de {low} a {high}).}}',
  found:
    'Obtenido del centro de la bola en {used} fotogramas de una película de alta velocidad; incertidumbres según JCGM 100{checked, select, yes {, comprobado por Monte Carlo (JCGM 101)} other {}}.',
};

export const findings: SameShape<English['report']['findings']> = {
  reading: '<strong>{value}</strong> ({coverage})',
  flight: 'Dirección, energía, aceleración',
  elevation: 'Dirección a la salida',
  elevationIs:
    '<strong>{value}</strong> ({coverage}){way, select, level {: paralela a las filas de la imagen, dentro de lo conocido} up {: hacia arriba respecto a las filas de la imagen} other {: hacia abajo}}',
  kineticEnergy: 'Energía cinética a la salida',
  momentum: 'Cantidad de movimiento a la salida',
  boreAcceleration: 'Aceleración media en el ánima',
  boreAccelerationIs:
    '<strong>{value}</strong> ({coverage}) en los últimos tres diámetros de bola del ánima',
  deceleration: 'Deceleración tras la salida',
  dragCoefficient: 'Coeficiente de resistencia que implica',
  target: 'En el blanco',
  targetTime: 'Llegada al blanco',
  targetSpeed: 'Velocidad en el blanco',
  targetSpeedAfter: 'Velocidad tras el blanco',
  targetEnergy: 'Energía cedida al blanco',
  streak: 'Velocidad solo por el desenfoque',
  streakIs:
    'El desenfoque de movimiento por sí solo da <strong>{speed}</strong> ({coverage}, {frames, plural, one {# fotograma} other {# fotogramas}}). {agrees, select, yes {Concuerda con el ajuste: {apart} {slower, select, yes {más lento} other {más rápido}} en los mismos fotogramas.} other {<alarm>No concuerda con el ajuste: {apart} {slower, select, yes {más lento} other {más rápido}} en los mismos fotogramas. Compruebe la exposición y la cadencia de grabación.</alarm>}}',
  spin: 'Rotación',
  spinIs:
    '<strong>{rate}</strong> ({coverage}): {turns} vueltas por segundo, en sentido {way, select, clockwise {horario} other {antihorario}} tal como se ve.',
  shake: 'Vibración',
  noDetail:
    'La escena inmóvil tiene muy poco detalle para saber si se movió la cámara o el lanzador.',
  still: 'La escena permaneció inmóvil, salvo {within} px.',
  moved:
    'La escena se movió {rms} px (valor cuadrático medio), como máximo {most} px, cada uno conocido con {u} px; se ha restado de las posiciones.',
  rivals: 'No es la bola',
  rival: 'Visto en {frames, plural, one {# fotograma} other {# fotogramas}}: {reason}',
  sound: 'Sonido',
  burstHeard: 'Rotura oída',
  impactHeard: 'Impacto en el tope oído',
  meanSpeed: 'Velocidad media hasta el tope',
  againstFilm:
    '{verdict, select, no {<alarm>No concuerda con la película: se oye {apart} {early, select, yes {antes} other {después}} de la rotura vista en la película ({coverage}). Compruebe el desfase entre sonido e imagen y la distancia del micrófono.</alarm>} yes {Concuerda con la película: se oye {apart} {early, select, yes {antes} other {después}} de la rotura vista en la película ({coverage}).} other {Se oye {apart} {early, select, yes {antes} other {después}} de la rotura vista en la película ({coverage}).}}',
  drive:
    'A modo de comparación: en un vacío perfecto, el aire exterior empujaría con unos {force} N: {acceleration} m/s² al principio, {gravities} g. También hay que acelerar la columna de aire detrás de la bola.',
};

export const fit: SameShape<English['report']['fit']> = {
  chiSquare: 'Chi cuadrado {chiSquare} con {dof} grados de libertad.',
  downWeighted:
    '{count, plural, one {# centro está tan alejado que cuenta} other {# centros están tan alejados que cuentan}} menos de la mitad.',
  monteCarlo:
    'Monte Carlo, {trials} tiradas: {value}, intervalo {interval}; {agrees, select, yes {concuerda con el balance.} other {no concuerda con el balance, por lo que se indica su intervalo.}}',
};
