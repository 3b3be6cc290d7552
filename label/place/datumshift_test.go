package place

import "testing"

// Values of the grid that the standard's notes name (issue 102 of tdwg/bdq):
// three meridians of datumerrordata.js of the Georeferencing Calculator, version
// 2019-11-07, from south to north.
func TestMaxDatumShift(t *testing.T) {
	for _, tt := range []struct {
		lon  float64
		want []int
	}{
		{130, []int{3289, 3264, 3239, 3213, 3186, 3156, 3122, 3083, 3039, 2988, 2929, 2862, 2786, 2700, 2606, 2501, 2389, 2268, 2142, 2046, 2097, 2144, 2184, 2217, 2241, 2256, 2262, 2258, 2244, 2222, 2190, 2256, 2401, 2535, 2655, 2760}},
		{-180, []int{3289, 3085, 2883, 2684, 2490, 2449, 2478, 2505, 2530, 2552, 2572, 2589, 2604, 2617, 2628, 2637, 2645, 2652, 2657, 2663, 2668, 2673, 2679, 2685, 2692, 2701, 2710, 2720, 2732, 2745, 2759, 2773, 2788, 2804, 2819, 2834}},
		{-30, []int{3289, 3397, 3505, 3613, 3718, 3820, 3917, 4007, 4090, 4163, 4226, 4277, 4315, 4341, 4352, 4350, 4332, 4301, 4255, 4195, 4121, 4035, 3937, 3828, 3708, 3580, 3444, 3300, 3150, 2996, 2965, 2980, 2980, 2967, 2940, 2900}},
	} {
		for i, want := range tt.want {
			lat := float64(-90 + 5*i)
			if got := MaxDatumShift(lat, tt.lon); got < want-1 || got > want+1 {
				t.Errorf("at %v, %v: %d m, the grid has %d", lat, tt.lon, got, want)
			}
			if near := MaxDatumShift(min(lat+2.4, 90), tt.lon+2); lat < 90 && tt.lon < 178 && near != MaxDatumShift(lat, tt.lon) {
				t.Errorf("at %v, %v: not the nearest crossing", lat+2.4, tt.lon+2)
			}
		}
	}
	if got := MaxDatumShift(-30, 130); got != 2786 {
		t.Errorf("the standard's example: %d", got)
	}
}
