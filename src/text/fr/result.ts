import type { English, SameShape } from '../catalogue';

export const result: SameShape<English['result']> = {
  advice: 'Ce qui aiderait le plus',
  evidence: {
    title: 'Éléments à l’appui',
    stale: 'Des données ont changé : mesurez de nouveau. Ci-dessous, le résultat précédent.',
  },
  noSpeed: 'Pas de vitesse de sortie :',
  noLead: 'Pas d’avance de la membrane :',
  else: {
    title: 'Ce que le film montre encore',
    brokenFrom: 'À partir de l’image {frame}, la bille n’est plus entière',
  },
  fit: {
    title: 'Ajustement : {model}',
    check: '{verdict} : {message}',
    verdict: { passed: 'réussi', cautious: 'du côté sûr', failed: 'à examiner' },
  },
  centres: {
    title: 'Centres',
    summary: 'Centres de {found} images, {used} utilisés',
    frame: 'Image',
    time: 'Temps, ms',
    x: 'x, px',
    y: 'y, px',
    distance: 'Distance, mm',
    used: 'Utilisé',
    use: {
      yes: 'oui',
      no: 'non : {reason}',
      leftOut: 'écarté',
      manual: '{use} (placé à la main)',
    },
    byHand: 'À la main',
    restore: 'Reprendre',
    reject: 'Rejeter',
  },
};
