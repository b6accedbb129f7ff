import type { English, SameShape } from '../catalogue';

export const result: SameShape<English['result']> = {
  advice: 'Lo que más ayudaría',
  evidence: {
    title: 'Pruebas',
    stale: 'Los datos han cambiado: mida de nuevo. Abajo figura el resultado anterior.',
  },
  noSpeed: 'Sin velocidad de salida:',
  noLead: 'Sin adelanto de la membrana:',
  else: {
    title: 'Qué más muestra la película',
    brokenFrom: 'Desde el fotograma {frame} la bola ya no está entera',
  },
  fit: {
    title: 'Ajuste: {model}',
    check: '{verdict}: {message}',
    verdict: { passed: 'superado', cautious: 'del lado seguro', failed: 'compruébelo' },
  },
  centres: {
    title: 'Centros',
    summary: 'Centros de {found} fotogramas, {used} usados',
    frame: 'Fotograma',
    time: 'Tiempo, ms',
    x: 'x, px',
    y: 'y, px',
    distance: 'Distancia, mm',
    used: 'Usado',
    use: {
      yes: 'sí',
      no: 'no: {reason}',
      leftOut: 'excluido',
      manual: '{use} (colocado a mano)',
    },
    byHand: 'A mano',
    restore: 'Volver a usar',
    reject: 'Rechazar',
  },
};
