package reports

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestSpoolGivesBackWhatItTook writes less and more than is kept in memory, and
// reads it in pieces.
func TestSpoolGivesBackWhatItTook(t *testing.T) {
	for _, pieces := range []int{3, 40} {
		var s spool
		var want bytes.Buffer
		for i := range pieces {
			piece := bytes.Repeat([]byte{byte('a' + i%26)}, 400_000+i)
			want.Write(piece)
			require.NoError(t, s.write(piece))
		}
		assert.Equal(t, pieces*400_000 > spoolMemory, s.file != nil, "in a file only if it is much")
		var got bytes.Buffer
		for _, place := range []int64{0, 5, 400_000, int64(want.Len())} {
			require.NoError(t, s.copyTo(&got, place))
			require.Equal(t, place, int64(got.Len()))
		}
		assert.True(t, bytes.Equal(want.Bytes(), got.Bytes()))
		require.Error(t, s.copyTo(&got, int64(want.Len())+1), "more than there is")
		s.close()
	}
}
