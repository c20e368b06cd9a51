/** A sentence in which no line ends between a number and its move: "2 … Nxd6" stays whole. */
export function unbroken(sentence: string): string {
  return sentence.replace(
    /(\d+) (… )?(?=[A-Za-z♔-♟])/gu,
    (_, number, dots) => `${number}\u00a0${dots === undefined ? '' : '…\u00a0'}`,
  );
}
