"""Text at the door: what people and programs write, turned into facts once, and facts turned into what the contract promises."""
