const fs = require('fs');
function post(x) { var s = '<g id="p' + x + '">'; s += '<rect id="shaft' + x + '" x="' + x + '" y="10" width="3" height="40"/>'; s += "<path id='cap" + x + "' d='M" + x + " 10h3l-1.5-4z'/>"; return s + '</g>'; }
const out = ['<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 148 105">'];
for (let i = 0; i < 3; i++) out.push(post(10 * i));
out.push('</svg>'); fs.writeFileSync('out.svg', out.join('\n'));
