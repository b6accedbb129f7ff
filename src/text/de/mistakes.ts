import type { English, SameShape } from '../catalogue';

export const mistakes: SameShape<English['mistakes']> = {
  title: 'Häufige Fehler und wie groß sie sind',
  what: 'Ein Schuss mit Launcher B, berechnet vom Bildrechner dieses Projekts: kein wirklicher Schuss. Jeder Fehler wurde absichtlich gemacht und der Film zweimal mit diesem Werkzeug ausgewertet, einmal richtig, einmal falsch. Seine Größe ist, was herauskam; daneben steht, was eine Formel erwartet. Werte stehen mit der doppelten Standardunsicherheit.',
  back: 'Zurück zum Schuss',
  right: 'Richtig',
  wrong: 'Falsch',
  size: 'Größe des Fehlers',
  found: 'gefunden: {size}',
  expected: 'nach Formel: {size}',
  avoid: 'So vermeiden Sie ihn.',
  rendered: 'berechnet',
  formula: 'Formel',
  truth: 'Wahr',
  framesUsed: '{frames, plural, one {# Bild verwendet} other {# Bilder verwendet}}',
  withSpeed: 'Geschwindigkeit {speed}',
  warned: 'Bei diesem Fehler warnte das Werkzeug:',
  notWarned: 'Bei diesem Fehler gab das Werkzeug keine Warnung.',
  blurLimit:
    'Die Formel rechnet nur mit Pixelrauschen, also mit dem Mindesten. Angegeben wird mehr: Eine verwischte Kante sagt auch weniger darüber, wie die Kugel beleuchtet und wie lang ihr Strich ist.',
  source: 'Formel hier hergeleitet; keine andere Quelle.',
  lines: { muzzle: 'Mündungsebene', mark: 'dafür gehaltene Marke' },
  header: 'Fehler',
  quantity: {
    speed: 'Austrittsgeschwindigkeit',
    exitTime: 'Augenblick des Austritts',
    centreU: 'Unsicherheit eines Mittelpunkts',
  },
  list: 'Auf dieser Seite',
  wrongRate: {
    title: 'Falsche Bildrate',
    what: 'Aufgenommen wurde mit {rate}, eingetippt wurden {typed}: eine Einstellung von einem anderen Tag. Die Bilder sind dieselben; nur die Zeit dazwischen ist falsch. Mit der Wiedergaberate in der Datei, oft 30 Bilder/s, würde die Geschwindigkeit hundertfach zu klein.',
    avoid:
      'Schreiben Sie die Bildrate zu jedem Schuss auf. Filmen Sie ab und zu eine flackernde Lampe oder eine Uhr und vergleichen Sie die Bildrate damit (Zeitbasis, Prüfung der Bildrate).',
    formula: 'getippte Rate / wirkliche Rate − 1',
    both: 'Jedes dritte Bild des Schusses in einem. Richtig liegen die Kugeln 0,25 ms auseinander, mit der falschen Bildrate 0,30 ms.',
  },
  lostFrames: {
    title: 'Fehlende Bilder',
    what: 'Ein Bild nach Bild {after} wurde nicht aufgezeichnet. Die Kugel springt: Sie macht zwei Schritte in einem gezählten.',
    avoid:
      'Achten Sie im Streifenbild auf eine Stufe und geben Sie an, was fehlt (Zeitbasis, fehlende Bilder). Lesen Sie die Bildzahl der Kamera ab, und kopieren Sie Dateien, nicht Bildschirme.',
    formula:
      '6 · n₁ · n₂ · k / (N · (N² − 1)); k Bilder fehlen zwischen den ersten n₁ und den letzten n₂ von N Mittelpunkten',
    right: 'Jedes dritte Bild des ganzen Films.',
    wrong: 'Dasselbe, wenn ein Bild fehlt: Eine Lücke ist breiter.',
  },
  wrongPlane: {
    title: 'Maßstab in der falschen Ebene',
    what: 'Der Maßstab liegt {depth} hinter der Flugbahn, gesehen aus {distance}, und gilt als in ihrer Ebene. Er sieht kleiner aus, also scheint ein Pixel mehr Meter zu haben, als er hat.',
    avoid:
      'Legen Sie den Maßstab dorthin, wo die Kugel fliegt. Geht das nicht, messen Sie seine Tiefe und den Kameraabstand und geben beides an; stellen Sie die Kamera weiter weg und zoomen Sie.',
    formula: 'Tiefe / Kameraabstand',
    right: 'Der Maßstab in der Ebene des Flugs.',
    wrong: 'Derselbe Maßstab dahinter.',
  },
  parallax: {
    title: 'Parallaxe',
    what: 'Eine Marke {depth} hinter der Flugbahn, auf gleicher Höhe mit der Mündung, gilt als Mündungsebene. Die Kamera, {distance} entfernt, sieht sie schräg, also näher zur Bildmitte. Die Geschwindigkeit bleibt, wie sie ist; der Augenblick des Austritts und mit ihm der Vorlauf nicht.',
    avoid:
      'Markieren Sie die Mündung am Rohrende selbst, auf Höhe der Bohrung. Stellen Sie die Kamera gerade vor die Mündung, wenn es vor allem auf den Augenblick des Austritts ankommt.',
    formula: 'seitlicher Abstand × Tiefe / (Kameraabstand + Tiefe) / Geschwindigkeit',
    right: 'Die Marke in der Ebene des Flugs steht unter der Mündung.',
    wrong: 'Dieselbe Marke dahinter erscheint woanders.',
  },
  rollingShutter: {
    title: 'Rolling Shutter',
    what: 'Ein Telefon liest sein Bild Zeile für Zeile, je {lineTime}, hier gegen den Flug. Behandelt, als kämen alle Zeilen auf einmal, wird die Geschwindigkeit falsch: Von Bild zu Bild ist die Kugel auf Zeilen gekommen, die früher gelesen werden.',
    avoid:
      'Messen Sie die Auslesezeit je Zeile mit einer flackernden Lampe und geben Sie sie an (Zeitbasis, zeilenweises Auslesen), oder drehen Sie das Telefon so, dass quer zum Flug gelesen wird.',
    formula: '1 / (1 + Geschwindigkeit × Zeit je Zeile / Maßstab) − 1; mit dem Flug − statt +',
    right: 'Alle Zeilen auf einmal: jedes dritte Bild.',
    wrong: 'Zeile für Zeile, zu denselben Zeiten: Die Kugeln stehen dichter.',
  },
  blur: {
    title: 'Bewegungsunschärfe',
    what: 'Belichtet wird {long} statt {short}: mehr Licht, aber die Kugel wird entlang des Flugs länger. Ihre Mitte bleibt, wo sie war, also verschiebt sich die Geschwindigkeit nicht; aber jeder Mittelpunkt ist weniger gut bekannt.',
    avoid:
      'Lassen Sie die Kugel während der Belichtung höchstens ein Zehntel ihres Durchmessers fliegen, und holen Sie das Licht von Lampen.',
    formula: 'Wurzel aus dem Steigungsquadrat einer scharfen Kante durch das einer verwischten',
    right: 'Kurze Belichtung.',
    wrong: 'Lange Belichtung.',
  },
};
