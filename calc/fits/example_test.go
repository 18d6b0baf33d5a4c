package fits_test

import (
	"fmt"

	"wornfit/calc/fits"
)

func ExampleReadClass() {
	c, err := fits.ReadClass("js6")
	fmt.Printf("letter %s, grade %d, a hole: %v, %v\n", c.Letter, c.Grade, c.Hole(), err)
	// Output: letter js, grade 6, a hole: false, <nil>
}

func ExampleRead() {
	r, err := fits.Read("30 H7/k6")
	fmt.Printf("%.0f mm, hole %v, shaft %v, %v\n", r.Nominal/mm, r.Hole, r.Shaft, err)
	_, err = fits.Read("1.25 in H7")
	fmt.Println(err)
	// Output:
	// 30 mm, hole H7, shaft k6, <nil>
	// size with class is '1.25 in H7'; it must be a size in mm with a class or a pair, such as 25 H7, 30 k6 or 25 H7/p6
}

func ExampleReadB41() {
	name, err := fits.ReadB41("rc 4")
	fmt.Println(name, err)
	// Output: RC4 <nil>
}

func ExampleProcessNamed() {
	// What a turner may promise: the charts in process_grades.csv begin at IT7 and end at IT13.
	p, _, err := fits.ProcessNamed("turning")
	fmt.Printf("IT%d to IT%d, %v\n", p.Finest, p.Coarsest, err)
	// Output: IT7 to IT13, <nil>
}
