package symbol

// A dmSize is a row of ISO/IEC 16022, table 7: the sizes of ECC 200.
type dmSize struct {
	rows, cols int
	regionsX   int // data regions side by side
	regionsY   int
	data       int // data codewords
	check      int // error correction codewords
	blocks     int // how many blocks they are divided into
}

// The square sizes but for the largest, 144 × 144, which divides unevenly and
// would measure 27 mm at the narrowest module.
var dmSquares = []dmSize{
	{10, 10, 1, 1, 3, 5, 1}, {12, 12, 1, 1, 5, 7, 1}, {14, 14, 1, 1, 8, 10, 1},
	{16, 16, 1, 1, 12, 12, 1}, {18, 18, 1, 1, 18, 14, 1}, {20, 20, 1, 1, 22, 18, 1},
	{22, 22, 1, 1, 30, 20, 1}, {24, 24, 1, 1, 36, 24, 1}, {26, 26, 1, 1, 44, 28, 1},
	{32, 32, 2, 2, 62, 36, 1}, {36, 36, 2, 2, 86, 42, 1}, {40, 40, 2, 2, 114, 48, 1},
	{44, 44, 2, 2, 144, 56, 1}, {48, 48, 2, 2, 174, 68, 1}, {52, 52, 2, 2, 204, 84, 2},
	{64, 64, 4, 4, 280, 112, 2}, {72, 72, 4, 4, 368, 144, 4}, {80, 80, 4, 4, 456, 192, 4},
	{88, 88, 4, 4, 576, 224, 4}, {96, 96, 4, 4, 696, 272, 4}, {104, 104, 4, 4, 816, 336, 6},
	{120, 120, 6, 6, 1050, 408, 6}, {132, 132, 6, 6, 1304, 496, 8},
}

var dmRectangles = []dmSize{
	{8, 18, 1, 1, 5, 7, 1}, {8, 32, 2, 1, 10, 11, 1}, {12, 26, 1, 1, 16, 14, 1},
	{12, 36, 2, 1, 22, 18, 1}, {16, 36, 2, 1, 32, 24, 1}, {16, 48, 2, 1, 49, 28, 1},
}

// dataMatrix returns the smallest symbol that holds text, or why there is
// none.
func dataMatrix(text string, rectangle bool) (matrix, string) {
	sizes := dmSquares
	if rectangle {
		sizes = dmRectangles
	}
	for _, s := range sizes {
		// Two digits a codeword is the densest there is.
		if 2*s.data < len(text) {
			continue
		}
		if words, ok := dmCodewords(text, s.data); ok {
			return matrix{modules: s.draw(s.withCheck(words)), rows: s.rows, spoken: text}, ""
		}
	}
	if rectangle {
		return matrix{}, "it is too long for a rectangle; a square holds more"
	}
	return matrix{}, "it is too long"
}

// withCheck appends the Reed-Solomon codewords. Blocks are interleaved: block
// b has the data codewords b, b+blocks, b+2·blocks … and likewise its check
// codewords.
func (s dmSize) withCheck(data []byte) []byte {
	n := s.check / s.blocks
	gen := dmGenerator(n)
	out := append(data, make([]byte, s.check)...)
	for b := range s.blocks {
		rem := make([]byte, n)
		for i := b; i < s.data; i += s.blocks {
			lead := data[i] ^ rem[0]
			copy(rem, rem[1:])
			rem[n-1] = 0
			for k, g := range gen {
				rem[k] ^= dmField.mul(lead, g)
			}
		}
		for i, r := range rem {
			out[s.data+i*s.blocks+b] = r
		}
	}
	return out
}

// A field is GF(256) by its powers and their exponents.
type field struct {
	exp [255]byte
	log [256]byte
}

// dmField is GF(256) modulo x⁸ + x⁵ + x³ + x² + 1.
var dmField = func() (f field) {
	x := 1
	for i := range f.exp {
		f.exp[i], f.log[x] = byte(x), byte(i)
		if x <<= 1; x > 255 {
			x ^= 0x12D
		}
	}
	return f
}()

func (f *field) mul(a, b byte) byte {
	if a == 0 || b == 0 {
		return 0
	}
	return f.exp[(int(f.log[a])+int(f.log[b]))%255]
}

// dmGenerator returns (x+α)(x+α²)…(x+αⁿ) without its leading 1, the highest
// power first.
func dmGenerator(n int) []byte {
	g := make([]byte, n)
	for i := 1; i <= n; i++ {
		root := dmField.exp[i]
		lead := byte(1)
		for k := range i {
			// Multiplying by x moves everything up; by the root it stays.
			next := g[k]
			if k == i-1 {
				next = 0
			}
			g[k], lead = next^dmField.mul(root, lead), g[k]
		}
	}
	return g
}

// draw sets the codewords into the symbol's data regions and draws the finder
// and the clock track round each.
func (s dmSize) draw(words []byte) string {
	h, w := s.rows/s.regionsY-2, s.cols/s.regionsX-2 // of one region's inside
	p := dmPlacement{rows: h * s.regionsY, cols: w * s.regionsX}
	p.place(words)
	out := make([]byte, 0, s.rows*s.cols)
	for y := range s.rows {
		for x := range s.cols {
			ry, rx := y%(h+2), x%(w+2)
			dark := false
			switch {
			case rx == 0 || ry == h+1: // the solid sides
				dark = true
			case ry == 0: // the broken sides
				dark = rx%2 == 0
			case rx == w+1:
				dark = ry%2 == 1
			default:
				dark = p.bits[(y/(h+2)*h+ry-1)*p.cols+x/(w+2)*w+rx-1] == 1
			}
			if dark {
				out = append(out, '1')
			} else {
				out = append(out, '0')
			}
		}
	}
	return string(out)
}

// A dmPlacement sets codewords into the mapping matrix, as ISO/IEC 16022,
// annex F, describes: each has an L-shaped place of eight modules, laid along
// diagonals that run up and down, with four shapes for the corners.
type dmPlacement struct {
	rows, cols int
	bits       []int8 // 0 light, 1 dark, -1 not yet set
	words      []byte
}

func (p *dmPlacement) place(words []byte) {
	p.words = words
	p.bits = make([]int8, p.rows*p.cols)
	for i := range p.bits {
		p.bits[i] = -1
	}
	rows, cols := p.rows, p.cols
	row, col := 4, 0
	for row < rows || col < cols {
		switch {
		case row == rows && col == 0:
			p.shape([8][2]int{{rows - 1, 0}, {rows - 1, 1}, {rows - 1, 2}, {0, cols - 2}, {0, cols - 1}, {1, cols - 1}, {2, cols - 1}, {3, cols - 1}})
		case row == rows-2 && col == 0 && cols%4 != 0:
			p.shape([8][2]int{{rows - 3, 0}, {rows - 2, 0}, {rows - 1, 0}, {0, cols - 4}, {0, cols - 3}, {0, cols - 2}, {0, cols - 1}, {1, cols - 1}})
		case row == rows-2 && col == 0 && cols%8 == 4:
			p.shape([8][2]int{{rows - 3, 0}, {rows - 2, 0}, {rows - 1, 0}, {0, cols - 2}, {0, cols - 1}, {1, cols - 1}, {2, cols - 1}, {3, cols - 1}})
		case row == rows+4 && col == 2 && cols%8 == 0:
			p.shape([8][2]int{{rows - 1, 0}, {rows - 1, cols - 1}, {0, cols - 3}, {0, cols - 2}, {0, cols - 1}, {1, cols - 3}, {1, cols - 2}, {1, cols - 1}})
		}
		for { // upwards
			if row < rows && col >= 0 {
				p.utah(row, col)
			}
			row, col = row-2, col+2
			if row < 0 || col >= cols {
				break
			}
		}
		row, col = row+1, col+3
		for { // downwards
			if row >= 0 && col < cols {
				p.utah(row, col)
			}
			row, col = row+2, col-2
			if row >= rows || col < 0 {
				break
			}
		}
		row, col = row+3, col+1
	}
	// Some sizes leave the last corner empty; it gets a fixed pattern.
	if last := len(p.bits) - 1; p.bits[last] < 0 {
		p.bits[last], p.bits[last-1] = 1, 0
		p.bits[last-cols-1], p.bits[last-cols] = 1, 0
	}
}

// utah sets the next codeword into the common shape, whose last module is at
// row and col, unless that place is taken. A codeword that leaves the matrix
// at one side comes in at the other.
func (p *dmPlacement) utah(row, col int) {
	if p.bits[row*p.cols+col] >= 0 {
		return
	}
	var at [8][2]int
	for i, d := range [8][2]int{{-2, -2}, {-2, -1}, {-1, -2}, {-1, -1}, {-1, 0}, {0, -2}, {0, -1}, {0, 0}} {
		r, c := row+d[0], col+d[1]
		if r < 0 {
			r, c = r+p.rows, c+4-(p.rows+4)%8
		}
		if c < 0 {
			r, c = r+4-(p.cols+4)%8, c+p.cols
		}
		at[i] = [2]int{r, c}
	}
	p.shape(at)
}

// shape sets the next codeword, its highest bit first.
func (p *dmPlacement) shape(at [8][2]int) {
	w := p.words[0]
	p.words = p.words[1:]
	for i, rc := range at {
		p.bits[rc[0]*p.cols+rc[1]] = int8(w >> (7 - i) & 1)
	}
}
