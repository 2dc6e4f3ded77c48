package record

type object = map[string]any

type schemaBuilder struct{ defs object }

func (p single[P]) schema(b *schemaBuilder) object  { return nil }
func (p several[P]) schema(b *schemaBuilder) object { return nil }
func (p byID[P]) schema(b *schemaBuilder) object    { return nil }
