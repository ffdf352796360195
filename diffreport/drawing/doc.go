// Package drawing works out the drawings of an order: the spaces that a crew
// visits with the pathways between them, and the faces of panels with the ports
// that are touched.
//
// It gives places and marks, in pixels, and no picture: who writes a document
// decides how a line looks. The same order gives the same drawing. It takes the
// two plants that the order leads between as they are, with records missing or
// contradicting each other, and draws what is there; what does not fit is counted
// and said, never left out in silence. Every text that it hands out can be
// printed: control characters are escaped, overlong labels end in an ellipsis.
package drawing
