import type { English, SameShape } from '../catalogue';

export const explain: SameShape<English['explain']> = {
  title: 'Was dieser Schritt bestimmt',
  yours: 'Ihre Zahlen',
  notYet: 'noch nicht bekannt: Schritt {step}',
  missing: 'Wo eine Zahl noch fehlt, steht in der Formel ihr Buchstabe. Es fehlen noch: {list}.',
  is: '{letter}, {name}',
  mistake: 'Ein häufiger Fehler',
  toMistake: 'In Bildern: {title}',
  what: {
    footage:
      'Der Film ist eine Reihe von Bildern in gleichen Zeitabständen. Alles Weitere zählt Bilder: welches zeigt die Kugel wo. Deshalb darf kein Bild fehlen oder doppelt sein, und es muss die Datei der Kamera selbst sein, keine verlangsamte oder geschnittene Kopie.',
    clock:
      'Geschwindigkeit ist Weg durch Zeit, und der Film hat keine eigene Zeit: Sie ist die Zahl der Bilder durch die Bildrate. Um welchen Anteil die Bildrate falsch ist, um den ist jede Geschwindigkeit falsch.',
    scale:
      'Der Film kennt Pixel, die Geschwindigkeit braucht Meter. Eine bekannte Länge in der Ebene des Flugs ergibt die Meter je Pixel. Eine Länge hinter dieser Ebene sieht kleiner aus; der Kameraabstand sagt, um wie viel.',
    ball: 'In jedem Bild wird der Mittelpunkt der Kugel auf einen kleinen Teil eines Pixels gemessen. Sein Abstand von der Mündungsebene entlang des Flugs ist so viele Pixel mal dem Maßstab. Solange der Verschluss offen ist, fliegt die Kugel weiter; ihr Bild wird um die Unschärfe entlang des Flugs länger.',
    seal: 'Die Membran ist offen, sobald ihre Auswölbung reißt. Verglichen mit dem Augenblick, in dem der Mittelpunkt der Kugel die Mündungsebene quert, sagt das, was zuerst kam und um wie viel.',
    result:
      'Zwei Mittelpunkte und ihre Zeiten ergeben schon eine Geschwindigkeit: den Mittelwert dazwischen. Luft bremst die Kugel, also ist sie an der Mündung schneller; die Anpassung durch alle Mittelpunkte führt zur Mündungsebene zurück.',
    models:
      'Das Meiste, was die Luft geben könnte: ihr ganzer Druck auf die Kugel über das ganze Rohr, nichts vor der Kugel, keine Reibung, kein Leck. Ein Film, der mehr sagt, enthält einen Fehler.',
  },
  symbol: {
    frames: 'Bilder des Films',
    interval: 'Zeit von Bild zu Bild',
    duration: 'vom ersten Bild zum letzten',
    rate: 'Bildrate der Aufnahme',
    length: 'bekannte Länge',
    lengthPixels: 'ihre Länge im Film',
    depth: 'ihre Tiefe hinter der Flugbahn',
    cameraDistance: 'Kameraabstand',
    oneScale: 'Maßstab',
    perPixel: 'Maßstab',
    centrePixels: 'Mittelpunkt ab Mündungsebene, im Film',
    centre: 'dasselbe in Metern',
    exposure: 'Belichtungszeit',
    blur: 'Unschärfe entlang des Flugs',
    exitTime: 'der Mittelpunkt tritt aus',
    burstTime: 'die Membran öffnet',
    lead: 'Vorlauf der Membran',
    startPlace: 'Mittelpunkt im ersten verwendeten Bild',
    endPlace: 'Mittelpunkt im letzten',
    startTime: 'Zeit des ersten',
    endTime: 'Zeit des letzten',
    meanSpeed: 'mittlere Geschwindigkeit dazwischen',
    exitVelocity: 'Austrittsgeschwindigkeit',
    pressure: 'Druck der Luft',
    mass: 'Masse der Kugel',
    barrel: 'Rohrlänge',
    boreArea: 'Querschnitt der Bohrung',
    mostSpeed: 'das Meiste, was möglich ist',
  },
  note: {
    footage: 'Vom ersten Bild zum letzten sind es N − 1 Abstände, nicht N.',
    clock:
      'Die Bildrate ist auf {share} bekannt; ebenso, allein aus diesem Grund, jede Geschwindigkeit.',
    lines:
      'Diese Kamera liest ihr Bild Zeile für Zeile, je {line}: Die letzte Zeile kommt {whole} nach der ersten.',
    plane:
      'Hier bestimmt das markierte Rechteck den Maßstab; die bekannte Länge wird damit verglichen.',
    lengths:
      '{count} bekannte Längen werden nach ihren Unsicherheiten gemittelt; zusammen ergeben sie {scale}.',
    ball: 'Das ist Bild {frame}, das mittlere der verwendeten.',
    seal: 'Beide Augenblicke teilen die Zeitbasis des Films; ihre Korrelation ist {r}.',
    result: 'Durch die Anpassung zur Mündungsebene zurückgeführt: v = {speed}.',
    models: 'Der Film sagt {speed}: {share} davon.',
  },
  parts: {
    scale: 'Woraus die Unsicherheit des Maßstabs besteht. Quadrate addieren sich: {u} insgesamt.',
    result:
      'Woraus die Unsicherheit der Geschwindigkeit besteht, Größtes zuerst. Quadrate addieren sich: {u} insgesamt, als Standardunsicherheit.',
    rest: 'alle übrigen zusammen',
  },
  mistakeIn: {
    footage:
      'Beim Aufnehmen oder Kopieren geht ein Bild verloren, und niemand merkt es: Die Kugel scheint zu springen.',
    clock:
      'Die Wiedergaberate in der Datei oder eine Einstellung von einem anderen Tag gilt als Bildrate der Aufnahme.',
    rolling:
      'Ein Telefon liest Zeile für Zeile, wird aber behandelt, als nähme es jedes Bild auf einmal auf.',
    scale: 'Der Maßstab liegt auf der Bank oder an der Wand, nicht in der Ebene des Flugs.',
    ball: 'Lange Belichtung für mehr Licht: Die Kugel wird zum Strich, ihr Mittelpunkt unsicherer.',
    seal: 'Eine Marke an etwas hinter dem Rohr gilt als Mündung: schräg gesehen steht sie woanders.',
    result:
      'Der Maßstab lag hinter der Flugbahn, und die kleine Unsicherheit lässt davon nichts merken.',
    models: 'Einem Film über der Obergrenze wird geglaubt, obwohl seine Bildrate falsch war.',
  },
};
