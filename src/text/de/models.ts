import type { English, SameShape } from '../catalogue';

export const models: SameShape<English['models']> = {
  title: 'Modelle',
  caution:
    'Vorhersagen dienen nur der Untersuchung: Sie sind kein Grund, einen Werfer sicher zu nennen, und keiner, ihn zu ändern. Die örtlichen Vorschriften und die fachkundige Aufsicht gehen vor.',
  ballAndAir:
    'Kugel und Luft werden im Schritt „Kugel“ angegeben; auch sie gehen in die Modelle ein.',
  model: 'Modell',
  cards: {
    title: 'Was die Modelle voraussetzen',
    source: 'Quelle: {source}',
    constantForce: {
      title: 'Konstante Kraft',
      assumes:
        'Der Außendruck schiebt die Kugel, wie schnell sie auch ist, in ein vollkommenes Vakuum. Keine Luft wird in Bewegung gesetzt, keine entweicht, nichts reibt, und vor der Kugel ist nichts, auch nicht außerhalb der Mündung. Restdruck, Berstdruck und Verluste werden nicht verwendet; die Membran öffnet, wenn die Kugel sie berührt. Das Modell liegt immer über dem, was ein Werfer leistet.',
      source:
        'Lehrbuchmechanik; als naive Schranke angegeben von Ayars und Buchholtz, Am. J. Phys. 72 (2004) 961, Gl. 1 und 2.',
    },
    momentum: {
      title: 'Impuls von Kugel und Luft',
      assumes:
        'Die Luft, die der Kugel folgt, wird sofort auf deren Geschwindigkeit gebracht, mit der Dichte außen: Sie dehnt sich weder aus, noch hat sie Wellen. Durch eigene Terme ergänzt: gleichförmige Luft vor der Kugel, ohne Wärmeverlust verdichtet, Leckage, Einlaufverlust, Reibungen. Die Obergrenze, die Wurzel aus Druck durch Dichte, gehört zum Modell und begrenzt sonst nichts.',
      source:
        'Ayars und Buchholtz, Am. J. Phys. 72 (2004) 961, um die hier genannten Terme ergänzt.',
    },
    gasDynamics: {
      title: 'Gasdynamik',
      assumes:
        'Die eindimensionalen Euler-Gleichungen hinter und vor der Kugel, die ein Kolben mit undichtem Spalt ist: Wellen und Stöße werden verfolgt. Ein ideales Gas, über den Querschnitt gleich; die hintere Membran ist sofort verschwunden; die Mündungsmembran ist eine Wand, bis ihr Berstdruck überschritten ist, dann sofort offen; die Wände nehmen keine Wärme auf; die Kugel verliert nichts an die Reste der Membran.',
      source:
        'Toro, Riemann Solvers and Numerical Methods for Fluid Dynamics, 3. Aufl. 2009 (Verfahren); Seigel, AGARDograph 91 (1965) (Aufgabenstellung; aus dem Gedächtnis).',
    },
    expansion: {
      title: 'Grenzfall der Expansion',
      assumes:
        'An der Kugel hat sich die Luft verlustfrei bis auf die Geschwindigkeit der Kugel entspannt, ohne Zeit für laufende Wellen: das, worauf die Gasdynamik bei einer schweren Kugel hinausläuft, und mehr als sie bei einer leichten. Luft vor der Kugel und Leckage wie im Impulsmodell; Einlaufverlust und Wandreibung werden nicht verwendet.',
      source:
        'Seigel, The Theory of High Speed Guns, AGARDograph 91 (1965), große Kammer (aus dem Gedächtnis; Algebra geprüft).',
    },
  },
  run: {
    stale:
      'Werfer, Film oder Überdeckungswahrscheinlichkeit wurden geändert, nachdem die Modelle gerechnet waren. Sagen Sie erneut vorher.',
    cancelled: 'Abgebrochen: Nicht alle Modelle sind fertig.',
    running: 'Modelle werden gerechnet',
    predict: 'Vorhersagen',
    again: 'Erneut vorhersagen',
  },
  launcher: {
    title: 'Werfer',
    none: 'Es ist noch kein Werfer angegeben. Zuerst kommen Bohrung und Rohrlänge.',
    losses: 'Start, Leckage und Verluste',
    lossesWhat: 'Übliche Werte, sofern Sie es nicht besser wissen; jeder mit eigener Unsicherheit.',
    needed: 'nötig',
    closeToSeal: 'dicht an der Membran',
    boreDiameter: 'Bohrungsdurchmesser',
    barrelLength: 'Rohrlänge von Membran zu Membran',
    residualPressure: 'Restdruck',
    sealBurstPressure: 'Berstdruck der Membran',
    startPosition: 'Start des Kugelmittelpunkts',
    gapDischarge: 'Durchfluss des Spalts',
    entranceLoss: 'Einlaufverlust',
    wallFriction: 'Wandreibung',
    ballFriction: 'Reibung der Kugel, N',
    hint: {
      residualPressure: 'Absolutdruck der Luft, die im Rohr verblieben ist.',
      sealBurstPressure:
        'Um wie viel der Druck innen den äußeren übersteigt, wenn die Mündungsmembran öffnet.',
      startPosition: 'Ab der hinteren Membran. Leer: Die Kugel liegt 1 ± 0,5 mm vor ihr.',
      gapDischarge: 'Durchflusszahl der Leckage an der Kugel vorbei; 0: keine Leckage.',
      entranceLoss: 'Etwa 0,5 bei scharfer Kante, nahe 0 bei trompetenförmigem Einlauf.',
      wallFriction: 'Rohrreibungszahl nach Darcy: etwa 0,02 in einem glatten Rohr.',
    },
  },
  view: {
    title: 'Film und Modell im Vergleich',
    stale:
      'Werfer oder Film wurden geändert: erneut vorhersagen. Unten steht, was die Modelle zuvor ergaben.',
    what: 'Vier Modelle sagen, wie schnell dieser Werfer schießen und wann seine Mündungsmembran öffnen sollte, jedes mit der Unsicherheit, die aus den Eingaben folgt, neben dem, was im Film gemessen wurde.',
    stateLauncher:
      'Geben Sie den Werfer im Eingabebereich an: Bohrung, Länge und seine beiden Drücke.',
  },
  comparison: {
    meaning: {
      agree:
        'Film und Modell stimmen überein: Sie unterscheiden sich um nicht mehr, als ihre Unsicherheiten erklären.',
      questionable:
        'Film und Modell stimmen womöglich nicht überein: Sie liegen {zeta} Standardunsicherheiten auseinander, was der Zufall höchstens einmal in zwanzig Schüssen erklärt.',
      differ:
        'Film und Modell stimmen nicht überein: Sie liegen {zeta} Standardunsicherheiten auseinander. Falsch ist eine Eingabe, der Film oder was das Modell weglässt.',
    },
    noSpeed:
      'Der Film liefert noch keine Austrittsgeschwindigkeit; daher wird nichts mit den Modellen verglichen.',
    speed: 'Austrittsgeschwindigkeit',
    lead: 'Vorlauf der Mündungsmembran',
    caption: '{title} ({coverage})',
    from: 'Herkunft',
    difference: 'Film minus Modell',
    filmAndModel: 'Film und Modell',
    film: 'Film',
    notMeasured: 'nicht gemessen',
    waiting: 'wird berechnet',
    verdict: {
      agree: 'stimmen überein',
      questionable: 'weichen evtl. ab',
      differ: 'weichen ab',
    },
    what: 'ζ ist die Differenz durch ihre Standardunsicherheit: Bis 2 stimmen sie überein, ab 3 weichen sie ab. Eₙ ist die Differenz durch ihre erweiterte Unsicherheit für 95 %: Über 1 weichen sie ab. Die Unsicherheit eines Modells ist die seiner Eingaben; was es weglässt, ist darin nicht enthalten. Film und Modell gelten als unabhängig.',
    en: 'Eₙ',
    ofModel: '{model}: {message}',
  },
  plots: {
    title: 'Austrittsgeschwindigkeit und Rohrlänge',
    axis: 'Rohrlänge',
    thisShot: 'dieser Schuss',
  },
  residual: {
    title: 'Was Restluft kostet',
    name: 'Austrittsgeschwindigkeit und Restdruck',
    caption:
      'Austrittsgeschwindigkeit bei anderem Restdruck, alles Übrige wie angegeben ({coverage})',
    share: 'Anteil der Außenluft',
    pressure: 'Restdruck',
    doesNotLeave: 'tritt nicht aus',
    pressureIs: '{number} hPa',
  },
  gap: {
    title: 'Was falsch sein müsste',
    byModel: 'Nach dem Modell',
    waiting: 'Wird berechnet; die Geschwindigkeiten kommen zuerst.',
    noSpeed:
      'Messen Sie zuerst den Film: Es gibt keine Geschwindigkeit, mit der sich das Modell vergleichen ließe.',
    doesNotLeave:
      'Nach diesem Modell tritt die Kugel nicht aus; daher lässt sich keine Abweichung schließen.',
    caption: 'Jeweils eine Eingabe, die übrigen wie angegeben; die am wenigsten abwegige zuerst',
    input: 'Eingabe',
    needed: 'Müsste sein',
    off: 'Abweichung',
    inU: 'In eigenen Unsicherheiten',
    exact: 'als exakt angegeben',
  },
};
