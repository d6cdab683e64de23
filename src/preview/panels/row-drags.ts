/** Rows of a list that are dragged to another place in it; the place that they would take is shown. */

/** @param move is called with the row's place and that of the row it was dropped on */
export function followRowDrags(list: HTMLElement, move: (from: number, to: number) => void): void {
  let dragged: number | undefined;
  const rowOf = (target: EventTarget | null) => {
    const row = target instanceof Element ? target.closest('li') : null;
    return row ? [...list.children].indexOf(row) : undefined;
  };
  const show = (over: number | undefined) =>
    [...list.children].forEach((row, index) => {
      row.classList.toggle('lifted', index === dragged);
      row.classList.toggle('drop-above', index === over && over < (dragged ?? 0));
      row.classList.toggle('drop-below', index === over && over > (dragged ?? 0));
    });
  list.addEventListener('dragstart', ({ target, dataTransfer }) => {
    dragged = rowOf(target);
    if (dataTransfer) dataTransfer.effectAllowed = 'move';
    show(undefined);
  });
  list.addEventListener('dragover', (event) => {
    const over = rowOf(event.target);
    if (dragged === undefined || over === undefined) return;
    event.preventDefault();
    show(over === dragged ? undefined : over);
  });
  list.addEventListener('drop', (event) => {
    event.preventDefault();
    const to = rowOf(event.target);
    if (dragged !== undefined && to !== undefined && to !== dragged) move(dragged, to);
  });
  list.addEventListener('dragend', () => {
    dragged = undefined;
    show(undefined);
  });
}
