import type { Vocabulary } from "./vocabulary";

export const polish: Vocabulary = {
  language: "Polish",
  headings: {
    identifier: [
      "sygnatura, inv, numer inwentarzowy, nr inwentarzowy, nr inw, numer inw, numer obiektu, nr obiektu, numer katalogowy, nr katalogowy, numer akcesji, identyfikator, sygn",
      "kod kreskowy, kod, odnośnik",
      "nr, numer, lp, l p",
    ],
    title: ["tytuł, tytuł skrócony, autor tytuł", "obiekt, nazwa, nazwa obiektu, przedmiot", "opis"],
    height: ["wysokość, wys"],
    width: ["szerokość, szer"],
    depth: ["grubość, głębokość, gł, grub, gr"],
    length: ["długość, dł"],
    dimensions: ["wymiary, wymiar, rozmiar, rozmiary"],
    weight: ["waga, masa, ciężar"],
    unit: ["jednostka, jednostki, jednostka miary, jm"],
    enclosure: [
      "opakowanie, rodzaj opakowania, opakowanie ochronne, rodzaj pudła, typ opakowania, ochrona, obwoluta ochronna",
      "nowe opakowanie, proponowane opakowanie, zalecane opakowanie, nowe pudło",
    ],
    quantity: ["ilość, liczba, liczba egzemplarzy, egzemplarze, sztuk, szt"],
    box: ["pudło, wspólne pudło, wspólne pudełko"],
    priority: ["priorytet, pilność"],
    batch: ["partia, seria"],
    hazard: ["zagrożenie, zagrożenia, ryzyko, niebezpieczeństwo"],
  },
  letters: { height: "w", width: "s", depth: "g" },
  maybe: {
    enclosure: "obecne opakowanie, stare opakowanie, aktualne opakowanie, potrzebne pudło",
    box: "nr pudła, numer pudła, pudło nr",
    quantity: "tomy, liczba tomów, części, liczba części",
    depth: "średnica, śr",
    dimensions: "format",
  },
  harmless: "obiektu, książki, max, maks, maksymalna, całkowita, ok, zamknięta, w",
  settings: { material: "materiał, materiały" },
  yes: "tak, t, prawda",
  no: "nie, n, fałsz",
  none: "brak, żadne, nie dotyczy, nie wymaga, bez, nic, nie trzeba, w porządku",
  totals: "razem, suma, ogółem, łącznie, suma częściowa, średnia",
  kinds: {
    tray: "tacka, taca, kuweta",
    "folded tray": "tacka składana, taca składana",
    "lidded box": "pudełko z wiekiem, pudło z wiekiem, pudełko z pokrywą, pudło z pokrywą, pudełko z przykrywką",
    "three-tray box": "pudełko z szyjką, pudło z szyjką, pudełko trzyczęściowe",
    slipcase: "futerał, etui, kaseta wsuwana",
    "clamshell box":
      "pudełko typu muszla, pudełko muszlowe, pudło muszlowe, pudełko typu clamshell, pudło clamshell, pudełko z opadającym grzbietem",
    "four-flap wrapper":
      "teczka czteroklapowa, teczka z czterema klapami, teczka czteroskrzydłowa, obwoluta czteroskrzydłowa, teczka z czterema klapami, czteroklapowa teczka, obwoluta czteroklapowa",
  },
  unsure: {
    pudełko: ["lidded box", "clamshell box"],
    pudło: ["lidded box", "clamshell box"],
    kaseta: ["slipcase", "clamshell box"],
    teczka: ["four-flap wrapper", "flap portfolio", "folded tray"],
    obwoluta: ["four-flap wrapper", "folded tray"],
  },
  notMade: "rama, koperta, skrzynia",
};
