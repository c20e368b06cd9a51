// Which words between the moves say how a move belongs to the others: another choice, a branch, a
// correction, a try, a threat? One row a cue; phrases of up to four words, accents folded away.

import { foldWord } from './fold-text.ts';

/** What a phrase between two moves says. `-before` speaks of the move that follows, `-after` of the one before. */
export type Cue =
  | 'or'
  | 'branch'
  /** The same behind its move ("Şh8 ise"). */
  | 'branch-after'
  | 'correct'
  | 'restart'
  | 'no'
  | 'reject-before'
  | 'doubt-before'
  /** The move that follows belongs to another puzzle. */
  | 'elsewhere'
  | 'reject-after'
  | 'doubt-after'
  /** A whole clause that turns down what stands before it, whoever its subject is. */
  | 'hopeless'
  | 'threat'
  /** The defender's threat, told before the answer to it. */
  | 'menace'
  /** A list of moves to choose from follows. */
  | 'candidates'
  /** A whole verdict where a sentence ends behind it ("and nothing."). */
  | 'nothing'
  /** The defence that turns the move before it down follows. */
  | 'refutation'
  /** What was played before the puzzle's position. */
  | 'played'
  /** The same of a side that is named: the solver's threat or the defender's. */
  | 'threat-white'
  | 'threat-black'
  | 'any'
  | 'but'
  /** The same with a word that points back across the end of a sentence ("That fails"). */
  | 'reject-that'
  /** Praise that counts for nothing where a "but" and another move follow. */
  | 'praise-after'
  /** The move before is better than another, or another answer beside it. */
  | 'better-after'
  | 'also-after'
  /** The move before is a second answer. */
  | 'beside-after'
  /** What follows is the writer's answer. */
  | 'verdict'
  /** Somebody else says the move that follows. */
  | 'says'
  /** "Wrong: Qh7", "Qh7 - wrong": a verdict beside the move before or behind. */
  | 'wrong'
  /** "And Black is fine": the side that is named stands well. */
  | 'well-white'
  | 'well-black'
  /** "X first, then Y": one side's moves, the reply left out. */
  | 'own'
  /** The start of such praise: "looks", "seems". */
  | 'looks-after'
  /** What is said behind a list is said of all its members. */
  | 'of-several'
  /** The two that follow are weighed against each other. */
  | 'between'
  /** Says nothing about moves, though a part of it would. */
  | 'none'
  | 'white'
  | 'black';

/** Words in the longest phrase. */
const LONGEST = 4;

const ROWS: readonly (readonly [Cue, string])[] = [
  [
    'or',
    'or|oder|ou|oppure|или|veya|ya da|either|entweder|alternatively|alternativ|sowohl|als auch|wie auch|aussi bien|tanto como|так же как|o bien|also possible|as well as|both',
  ],
  [
    'branch',
    `if|falls|wenn|bei|auf|si|se|если|eger|eğer|in case|when|after|nach|tras|apres|après|dopo|depois de|после|otherwise|else|sonst|against|
     variation|variant|variante|variante b|line b|on|а на|и на|или на`,
  ],
  [
    'branch-after',
    'den sonra|dan sonra|ten sonra|tan sonra|ise|olursa|oynarsa|alirsa|alırsa|gelirse|giderse|kacarsa|kaçarsa',
  ],
  [
    'correct',
    `hang on|scrap that|scrap this|cancel that|disregard that|never mind|nevermind|my bad|correcting myself|i stand corrected|come to think of it|sorry|oops|ups|uups|hoppla|opa|ops|oups|упс|errei|me enganei|me equivoque|me he equivocado|je me suis trompe|mi sono sbagliato|ho sbagliato|я ошибся|vertippt|verschrieben|falsch|whoops|i meant|i mean|meant|wait|hold on|actually|rather|jk|just kidding|only kidding|no that's|no that|no it's|scratch that|strike that|forget that|ignore that|crossed out|struck out|durchgestrichen|gestrichen|vergiss das|
     take it back|i take it back|take that back|i take that back|nope|make that|should be|
     quatsch|mist|moment mal|vergesst das|entschuldigung|sondern|ich meine|ich meinte|besser|perdon|perdón|digo|quise decir|mejor dicho|pardon|je voulais dire|plutot|plutôt|
     scusa|scusate|scusami|volevo dire|anzi|desculpe|desculpa|quero dizer|alias|
     извините|простите|стоп|погодите|не то|точнее|вернее|ошибся|то есть|pardon|yani|hayir dur|yok dur|dur bir dakika|ozur dilerim|özür dilerim|typo|mistake|blunder|instead`,
  ],
  [
    'restart',
    `right order|correct order|full line|full solution|complete line|correct version|correct line|neuer versuch|nuevo intento|nouvel essai|nouvelle tentative|nuovo tentativo|nova tentativa|richtige reihenfolge|edit|edited|correction|update|final answer|new answer|second attempt|second try|korrektur|nachtrag|correccion|corrección|
     correzione|correcao|correção|поправка|исправление|duzeltme|düzeltme|my answer is now|changed my mind|on second thought|on second thoughts`,
  ],
  [
    'but',
    'but|aber|pero|mais|ma|mas|но|ama|fakat|sino|however|yet|though|although|doch|jedoch|hingegen|dagegen|sin embargo|cependant|toutefois|pourtant|pero|tuttavia|porém|однако|зато|ancak|lakin|then i noticed|then i saw|then i realised|then i realized|no entanto|allerdings',
  ],
  [
    'praise-after',
    `wins|wins a|wins the|gewinnt|gana|gagne|vince|ganha|gains|gains time|nets|picks up|grabs|trades|exchanges|is fine|is ok|is okay|is possible|is playable|is strong|
     are natural|are obvious|are possible|are fine|are tempting|look good|look natural|seem good|looks good|looks nice|looks fine|looks strong|looks natural|looks obvious|looks winning|looks great|looked good|looked strong|looked natural|
     looked obvious|seems good|seems fine|seems strong|seems natural|seems obvious|seems winning|seemed good|seemed obvious|is natural|is obvious|
     is the obvious|is the natural|comes to mind|came to mind|sieht gut aus|sah gut aus|liegt nahe|ist naheliegend|parece bueno|parece buena|
     parece natural|semble bon|parait bon|semble fort|sembra buona|sembra forte|parece bom|parece boa|выглядит хорошо|iyi gorunuyor`,
  ],
  [
    'better-after',
    `is better|is stronger|is even better|is even stronger|is much better|is far better|works better|wins faster|mates faster|ist besser|ist starker|ist noch besser|
     es mejor|es mas fuerte|est meilleur|est plus fort|est bien meilleur|e meglio|e piu forte|e melhor|e mais forte|лучше|сильнее|daha iyi|daha guclu`,
  ],
  [
    'beside-after',
    `also works|works too|works as well|is also strong|is also possible|is also mate|is also good|also mates|mates too|mates as well|also wins|wins too|
     work too|win too|draws too|draw too|mate too|also work|also win|also draws|also draw|gehen auch|gewinnen auch|marche aussi|marchent aussi|gagnent aussi|tambien ganan|tambien sirve|tambien sirven|vince pure|funziona pure|tambem serve|тоже мат|de olur|wins as well|both win|both work|both mate|are both|both are|gewinnen beide|gehen beide|beide gewinnen|beide gehen|sind beide|beide sind|ambas ganan|las dos ganan|
     gagnent tous les deux|vincono entrambe|ambas ganham|оба выигрывают|ikisi de|geht auch|ist auch matt|gewinnt auch|tambien gana|gagne aussi|vince anche|tambem ganha|тоже выигрывает`,
  ],
  ['also-after', 'too|also|as well|auch|tambien|aussi|anche|tambem|тоже|также'],
  [
    'verdict',
    `the answer|the real answer|the solution|the key|the right move|the correct move|the winning move|the best move|best is|star move|my answer|i choose|i go|
     i'd go|i'll go|i prefer|i say|i vote|die losung|die antwort|am besten|la solucion|la respuesta|lo mejor|la solution|la reponse|le mieux|la soluzione|
     la risposta|a solucao|a resposta|решение|ответ|решает|cozum|cevap|i would go|i'm going|going with|i pick|i'd pick|i'll pick|i'd choose|i'd play|i'll play|i'd say|
     my gut says|my pick|my choice|my vote|i'm with|i submit|ich nehme|ich wahle|ich spiele|je choisis|je prends|elijo|me quedo con|scelgo|escolho|выбираю|seciyorum`,
  ],
  [
    'looks-after',
    'look|looks|looked|seem|seems|seemed|sieht|sah|sehen|parece|parecen|parecia|semble|semblait|sembra|sembrava|выглядит|кажется',
  ],
  ['says', 'says|said|sagt|dice|dit|diz|говорит|diyor'],
  ['wrong', 'wrong|falsch ,|faux|sbagliato|errado|неверно|yanlis'],
  [
    'well-white',
    `white is fine|white is ok|white is safe|white holds|white survives|white defends|white escapes|white is better|weiss steht gut|weiss halt|las blancas aguantan|
     les blancs tiennent|il bianco tiene|as brancas seguram|белые держатся`,
  ],
  [
    'well-black',
    `black is fine|black is ok|black is safe|black holds|black survives|black defends|black escapes|black is better|schwarz steht gut|schwarz halt|las negras aguantan|
     les noirs tiennent|il nero tiene|as pretas seguram|черные держатся`,
  ],
  [
    'own',
    `first , then|first then|first and then|erst , dann|erst dann|zuerst , dann|zuerst dann|d'abord , puis|d'abord puis|primero , luego|primero y luego|
     prima , poi|prima e poi|primeiro , depois|primeiro e depois|сначала , потом|сначала а потом`,
  ],
  ['between', 'between|zwischen|entre|tra|fra|между'],
  ['no', 'no|nein|non|нет|hayir|hayır|nao|não|nah|nee'],
  [
    'reject-before',
    `don't tell me|if only|wenn nur|delete|cross out|stops|stopping|prevents|preventing|rules out|ruling out|verhindert|impide|empeche|impedisce|предотвращает|wouldn't touch|would not touch|wouldn't play|would not play|my answer from|neither|nor|weder|ni|no rush with|no hurry with|no need for|can't go to|cannot go to|can't get to|can't play|cannot play|not|nicht|don't play|do not play|don't|do not|pas|instead of|rather than|statt|anstatt|anstelle von|
     avoid|and not|y no|e non|et pas|und nicht|e nao|и не|never|en vez de|en lugar de|au lieu de|invece di|em vez de|а не|не|yerine|
     unlike|forget|forget about|ignore|ignore my|scratch|discard|answer from|changed from|change from|changing from|switch from|switching from|vergesst|vergiss|anders als`,
  ],
  [
    'elsewhere',
    `last week's puzzle|last week's problem|last week's solution|last week's answer|yesterday's puzzle|yesterday's answer|last puzzle|
     previous puzzle|other puzzle|puzzle before|letzte woche|letzten woche|vorige woche|aufgabe davor|puzzle precedent|puzzle anterior|
     прошлой неделе|прошлой задаче`,
  ],
  [
    'doubt-before',
    `people say|people play|people would say|people would play|most say|most play|most would say|most would play|others say|others play|some say|some play|many say|many play|would have played|would've played|would have said|would have gone|who plays|who play|who said|who says|who chose|who think|who thinks|who thought|first saw|saw first|first looked at|looked first at|everyone sees|everybody sees|anyone sees|anybody sees|i had|wrote|i wrote|first wrote|написал|schrieb|escribi|escribí|j'ai ecrit|ho scritto|escrevi|je voulais|voulais|queria|quería|volevo|
     over|better than|besser als|mejor que|mieux que|meglio di|stronger than|faster than|than|i thought|
     thought|first thought|first i thought|i first thought|my first idea|first idea was|wanted to play|
     wanted|considered|i considered|tempting is|the tempting|the try|try is|tried|i tried|ich dachte|
     ich wollte|pense en|pensé en|j'ai pense|pensavo|dachte|dachte ich|dachte ich an|dachte an|wollte|
     pensaba|pensaba en|pensais|pensais a|думал|хотел|
     liked|going to say|about to say|at first glance|first glance|first instinct|first instinct was|instinct was|first thought was|first guess|first guess was|
     everyone will say|everyone says|everyone plays|everybody will say|everybody says|everybody plays|people will say|people will play|most will say|most will play|
     not sure about|unsure about|minutes on|hours on|seconds on|time on|ages on|stuck on|previously i said|previously said|earlier i said|i said before|before i said|
     almost wrote|almost said|almost played|nearly wrote|nearly said|nearly played|tempted by|tempted to play|
     erst hatte ich|zuerst hatte ich|erster gedanke|erster gedanke war|ersten blick|primero vi|primera vista|primera idea|primera idea era|
     premiere vue|premiere idee|premiere idee etait|prima vista|prima idea|prima idea era|primeira vista|primeira ideia|primeira ideia era|
     первый взгляд|первая мысль|напрашивается|ilk bakışta|ilk aklıma gelen|ilk fikrim`,
  ],
  [
    'reject-after',
    `don't trust|i don't trust|wouldn't trust|runs into|run into|ran into|walks into|is met by|met by|is answered by|misses|missed|is the threat|is the idea|was the idea|is threatened|is illegal|not legal|fails|fail|fails to|leads nowhere|goes nowhere|gets nowhere|lead anywhere|doesn't lead|is not enough|isn't enough|not enough|zu langsam|ist zu langsam|ist falsch|ist schlecht|bringt nichts|reicht nicht|es lento|es demasiado lento|demasiado lento|est trop lent|trop lent|troppo lento|e troppo lento|muito lento|слишком медленно|медленно|cok yavas|yavas|degil|değil|doesn't work|does not work|doesnt work|didn't work|not work|won't work|loses|lost|too slow|geht nicht|funktioniert nicht|
     klappt nicht|scheitert|no funciona|no sirve|falla|ne marche pas|echoue|échoue|non funziona|fallisce|nao funciona|não funciona|falha|
     не работает|не проходит|не годится|olmaz|olmuyor|calismaz|çalışmaz|is refuted|refuted|is wrong|was wrong|is a mistake|is bad|is not good|
     i don't like|i dislike|gefallt mir nicht|no me gusta|je n'aime pas|non mi piace|nao gosto|не нравится|would lose|would draw|would drop|would hang|would blunder|is no good|isn't good|not good enough|non va|none of them|none of these|neither works|is tempting|looks tempting|only draws|stalemates|is stalemate|that's stalemate|
     doesn't even|does not even|didn't even|won't even|isn't even|comes last|comes later|comes at the end|kommt zuletzt|kommt spater|viene despues|vient apres|viene dopo|vem depois|
     ist verlockend|verlockend|es tentador|est tentant|e tentador|e allettante|заманчиво`,
  ],
  [
    'candidates',
    `candidates|candidates are|candidate moves|candidate moves are|kandidaten|kandidatenzuge|jugadas candidatas|candidatas|coups candidats|mosse candidate|
     lances candidatos|кандидаты|ходы кандидаты|aday hamleler`,
  ],
  ['nothing', 'nothing|nichts|nada|rien|niente|ничего'],
  [
    'reject-that',
    `that was wrong|both wrong|both are wrong|all wrong|all are wrong|beides falsch|i don't like it|don't like that|it fails|that fails|this fails|it doesn't work|that doesn't work|this doesn't work|it does not work|that does not work|
     it loses|that loses|this loses|that just loses|it's bad|that's bad|it hangs|that hangs|that's wrong|that is wrong|this is wrong|it's wrong|
     that's no good|it's no good|that's not it|that isn't it|that's too slow|it's too slow|that runs into|it runs into|
     that only draws|it only draws|that's stalemate|it's stalemate|das geht nicht|geht aber nicht|das scheitert|das klappt nicht|das verliert|das ist falsch|
     eso no funciona|no funciona eso|eso falla|eso pierde|ca ne marche pas|cela ne marche pas|ca perd|questo non va|questo non funziona|
     isso nao funciona|isso perde|это не работает|это не проходит|это проигрывает|bu olmaz|bu calismaz`,
  ],
  [
    'hopeless',
    `ouch|autsch|runs away|gets away|escapes|slips away|lets him out|lets him go|lets him escape|lets the king out|lauft weg|entkommt|entwischt|se escapa|
     s'echappe|scappa|foge|убегает|kaciyor|that's only equal|that's just equal|is what most|is what everybody|is what everyone|there is nothing|there's nothing|i have nothing|i've got nothing|nothing there|it is nothing|it's nothing|gives nothing|
     da ist nichts|ist da nichts|ich habe nichts|non c'e niente|no hay nada|il n'y a rien|nao ha nada|ничего нет|hicbir sey yok`,
  ],
  [
    'doubt-after',
    `is only|is what my|is what he|is what she|is what they|is what others|is what people|is what some|drops|hangs|blunders|gives away|throws away|allows|is bad for|loses a|loses the|verliert die|verliert den|pierde la|perd la|perde la|only trades|only exchanges|is equal|is only equal|only equal|is boring|isn't|is not|doesn't|does not|didn't|would|wouldn't|could|can't|cannot|at first|only chases|only checks|only gives|only leads|only wins|only drives|only gets|only helps|is just|
     until|düşündüm|denedim|istedim|just chases|just gives|just drops|just wins|merely|ware|wäre|würde|wurde|seria|serait|sarebbe|бы|
     was my first|was my initial|was my original|was my guess|was my instinct|was what i|war mein erster|fue mi primera|etait ma premiere|era la mia prima|foi minha primeira`,
  ],
  [
    'played',
    `last move|previous move|black played|white played|just played|has played|letzter zug|zuletzt|gerade gespielt|dernier coup|ultima jugada|
     ultima mossa|ultimo lance|последний ход`,
  ],
  [
    'menace',
    `threatened with|threatened by|threatens me|threatens us|me amenaza|nos amenaza|mi minaccia|ci minaccia|me menace|nous menace|me ameaca|mir droht|
     uns droht|мне грозит|нам грозит|мне угрожает|нам угрожает`,
  ],
  [
    'threat-white',
    `white would love|white would like|white is about|white is going|white can play|white intends|white plans|weiss mochte|weiss will|weiss wurde|white threatens|white is threatening|white wants|white's threat is|weiss droht|blancas amenazan|blancs menacent|bianco minaccia|
     brancas ameacam|белые грозят|белые угрожают|beyaz tehdit`,
  ],
  [
    'threat-black',
    `black would love|black would like|black is about|black is going|black can play|black intends|black plans|schwarz mochte|schwarz will|schwarz wurde|black threatens|black is threatening|black wants|black's threat is|schwarz droht|negras amenazan|noirs menacent|nero minaccia|
     pretas ameacam|черные грозят|чёрные грозят|черные угрожают|siyah tehdit`,
  ],
  [
    'threat',
    `threatens|threatening|threat|threat is|threats|with the idea|idea|the idea|plan|planning|intending|intends|aiming for|preparing|droht|drohung|drohend|mit der idee|idee|
     amenaza|amenazando|con la idea|menace|menacant|menaçant|avec l'idee|minaccia|minacciando|ameaca|ameaça|ameacando|
     грозит|угрожает|угроза|угрожая|с идеей|tehdit|tehdidi|wants|hoping for|aiming at|δ`,
  ],
  [
    'any',
    `any|anything|any move|whatever|anywhere|beliebig|egal|irgendwas|cualquiera|n'importe|qualsiasi|qualquer|любой|любой ход|herhangi|moves|
     black moves|white moves|king moves|xxx|xx|random|some move|every|every move|all moves`,
  ],
  [
    'none',
    `i missed|almost missed|nearly missed|easily missed|or not|or else|either way|both sides|more or less|sooner or later|one way or|or so|or something|or whatever|or resign|or resigns|
     my bad handwriting|my bad english|my bad spelling|zor degil|kotu degil|fena degil|onemli degil|sorun degil|even if he|even if it|even if this|even if black|even if white|
     sorry for|sorry about|sorry if|sorry to|sorry my|sorry i'm|sorry im|sorry typing|sorry , typing|sorry , my|sorry , i'm on|sorry , on my|sorry on my|sorry bad|
     sorry english|sorry , english|sorry late|sorry long|perdon por|perdon mi|perdonen|pardon pour|pardon mon|scusate per|scusate il|desculpe o|desculpem|desculpa o|
     desculpe pelo|entschuldigung fur|sorry fur|sorry wegen|извините за|простите за|kusura bakmayin|can't decide|cannot decide|couldn't decide|can't choose|can't tell|do not know|don't tell me it's|don't tell me this|between the|degil mi|no falla|doesn't fail|does not fail|can't fail|cannot fail|never fails|doesn't lose|does not lose|nicht falsch|nicht schlecht|pas mal|don't see why not|don't see any|don't see anything|don't know|never seen|never saw|never find|never found|never miss|never forget|neither works|neither of|don't forget|do not forget|not forget|don't ignore|do not ignore|can't ignore|cannot ignore|not sure|not certain|why not|not hard|not difficult|not too|not only|no idea|no doubt|no problem|nicht sicher|warum nicht|nicht schwer|
     nicht nur|no se|por que no|pourquoi pas|perche no|perché no|не уверен|почему не|почему бы не|not much|not a lot|not bad|if not|why don't|is actually|was actually|actually forced|actually wins|actually winning|actually mate|actually works|
     rather nice|rather obvious|rather simple|rather easy|wait for it|take it back with|i take it back with|doesn't matter|does not matter|didn't matter|is just as|it's just as|there is nothing to|there is nothing black|there is nothing white|there is nothing he|there is nothing they|there is nothing for|nothing can|
     there's nothing to|there's nothing black|there's nothing white|there's nothing he|there's nothing they|there's nothing for|nothing to do`,
  ],
  ['white', 'white|weiss|weiß|blanco|blancas|blanc|blancs|bianco|branco|brancas|белые|beyaz|w'],
  ['black', 'black|schwarz|negro|negras|noir|noirs|nero|preto|pretas|черные|чёрные|siyah'],
];

function buildCues(): Map<string, Cue> {
  const table = new Map<string, Cue>();
  for (const [cue, phrases] of ROWS) {
    for (const phrase of phrases.split('|')) {
      const key = foldWord(phrase.trim().replace(/\s+/g, ' '));
      if (key !== '' && !table.has(key)) table.set(key, cue);
    }
  }
  return table;
}

const CUES: ReadonlyMap<string, Cue> = buildCues();

/** The cue that begins at a word of a list, the longest phrase first, and how many words it takes. */
export function cueAt(
  words: readonly string[],
  at: number,
): { readonly cue: Cue; readonly words: number } | null {
  for (let length = Math.min(LONGEST, words.length - at); length > 0; length -= 1) {
    const cue = CUES.get(words.slice(at, at + length).join(' '));
    if (cue !== undefined) return { cue, words: length };
  }
  return null;
}
