package reading

import "testing"

func TestVocabularyLoads(t *testing.T) {
	v, err := loadVocabulary(vocabularyFiles)
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%d words, %d nodes, %d phrases", len(v.known), len(v.nodes), len(v.phrases))
}
