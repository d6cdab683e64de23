for (let i = 0; i < 3000; i++) {
  const text = `<path id="${i}" class="${'x'.repeat(i % 50)}"/>`;
  for (let k = 0; k < text.length; k += 7) process.stdout.write(text.slice(k, k + 7));
}
