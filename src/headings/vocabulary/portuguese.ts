import type { Vocabulary } from "./vocabulary";

export const portuguese: Vocabulary = {
  language: "Portuguese",
  headings: {
    identifier: [
      "cota, inv, número de inventário, nº de inventário, nº inventário, n inventário, inventário, número de registo, número de registro, nº de registo, nº de registro, número de tombo, nº de tombo, nº tombo, tombo, identificador, número do objeto, número do objecto",
      "código de barras, código, referência, ref",
      "nº, núm, número",
    ],
    title: ["título, título breve, autor título", "objeto, objecto, nome, nome do objeto", "descrição, designação"],
    height: ["altura, alt"],
    width: ["largura, larg"],
    depth: ["espessura, profundidade, prof, esp, lombada, lomb"],
    length: ["comprimento, comp, compr"],
    dimensions: ["dimensões, medidas, dimensão, tamanho"],
    weight: ["peso"],
    unit: ["unidade, unidades, unidade de medida"],
    enclosure: [
      "acondicionamento, tipo de acondicionamento, acondicionamento proposto, embalagem, tipo de caixa, caixa proposta, proteção",
      "acondicionamento recomendado, novo acondicionamento, nova caixa",
    ],
    quantity: ["quantidade, qtd, qtde, exemplares, número de exemplares, cópias"],
    box: ["caixa, caixa partilhada, caixa compartilhada, caixa comum"],
    priority: ["prioridade, urgência"],
    batch: ["lote"],
    hazard: ["perigo, perigos, risco, riscos"],
  },
  letters: { height: "h, a", width: "l", depth: "p, e", length: "c" },
  maybe: {
    enclosure: "acondicionamento atual, acondicionamento actual, caixa atual, precisa de caixa, embalagem atual",
    box: "nº da caixa, número da caixa, caixa nº, nº caixa",
    quantity: "volumes, tomos, peças, número de peças",
    depth: "diâmetro, diâm",
    dimensions: "formato",
  },
  harmless: "objeto, objecto, livro, volume, máx, máxima, máximo, total, aprox, fechado, de, do, da, o, em",
  settings: { material: "material, materiais" },
  yes: "sim, s, verdadeiro",
  no: "não, n, falso",
  none: "nenhum, nenhuma, nada, sem caixa, não precisa, não necessita, não se aplica, está bem",
  totals: "total, totais, total geral, subtotal, soma, média",
  kinds: {
    tray: "tabuleiro, bandeja",
    "folded tray": "tabuleiro dobrado, bandeja dobrada",
    "lidded box": "caixa com tampa, caixa telescópica, caixa de tampa solta",
    "three-tray box": "caixa com pescoço, caixa de três bandejas",
    slipcase: "estojo, luva rígida, caixa luva",
    "clamshell box":
      "caixa concha, caixa de concha, caixa em concha, caixa de lombada móvel, caixa clamshell, caixa de duas bandejas",
    "four-flap wrapper":
      "pasta de quatro abas, quatro abas, envelope de quatro abas, capilha de quatro abas, invólucro de quatro abas",
  },
  unsure: {
    caixa: ["lidded box", "clamshell box"],
    "caixa por medida": ["clamshell box", "lidded box"],
    "caixa sob medida": ["clamshell box", "lidded box"],
    pasta: ["four-flap wrapper", "flap portfolio", "folded tray"],
    invólucro: ["four-flap wrapper", "folded tray"],
  },
  notMade: "moldura, envelope, caixa solander",
};
